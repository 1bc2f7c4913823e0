import { dataFolder, insideProgram } from './drawer/place.ts';
import { newKey } from './key.ts';
import { isOpen, namesIn } from './reach.ts';
import { type Running, startServer } from './server.ts';

/** Starts the server where PORT and HOST say, open to whom HOST and ALLOWED_HOSTS say, and stops it when it is told to. */

const port = Number(process.env.PORT || 8787);
const host = process.env.HOST || '127.0.0.1';

const WHY: Record<string, string> = {
  EADDRINUSE: `Port ${port} is taken: stop what uses it, or choose another with PORT=${port + 1}.`,
  EACCES: `Port ${port} may not be used by you: choose one from 1024 up with PORT.`,
  EADDRNOTAVAIL: `HOST=${host} is no address of this machine.`,
  ENOTFOUND: `HOST=${host} is no name that this machine knows.`,
};

function leave(sentence: string): never {
  console.error(sentence);
  process.exit(1);
}

if (!Number.isInteger(port) || port < 0 || port > 65_535)
  leave(`PORT=${process.env.PORT} is no port: give a whole number from 0 to 65535.`);

const { names, fault } = namesIn(process.env.ALLOWED_HOSTS ?? '');
if (!names) leave(fault);

const folder = dataFolder();
if (insideProgram(folder))
  leave(`PUPILWALK_DATA=${folder} lies inside the program, where a new version would sweep your parts away: choose a folder outside it.`);

let running: Running;
try {
  const key = isOpen({ host, names }) ? newKey() : undefined;
  running = await startServer(port, { host, names, ...(key ? { key } : {}), onFault: (error) => console.error(error) });
} catch (error) {
  leave(WHY[(error as NodeJS.ErrnoException).code ?? ''] ?? `Could not start: ${(error as Error).message}`);
}
for (const line of [`Pupilwalk is at ${running.address}`, ...running.words]) console.log(line);

/** What is started by npm gets a signal of the terminal twice, from the terminal and from npm: so close together they are one. */
const ONE_SIGNAL = 500;
let told: number | undefined;

for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.on(signal, () => {
    if (told === undefined) {
      told = performance.now();
      running.stop().then(() => process.exit(0));
    } else if (performance.now() - told > ONE_SIGNAL) process.exit(1);
  });
