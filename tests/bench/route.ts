import { bare, reports } from '../measure/asks.ts';
import { errorsOf, type Measured, median, rateOf } from '../measure/processes.ts';

const ROUNDS = 12;
const ROUND_MS = 600;
const CONNECTIONS = 8;

/**
 * Full reports a second over HTTP, against a bare route of the same process that reads and validates the same bodies:
 * one after the other in each round. Beside the rates what the server's process spends on a request, which says the same
 * where the machine is busy with other things.
 */
export async function route(measured: Measured) {
  const asks = { bare: bare(2000), report: reports(2000) };
  const spent = async (kind: keyof typeof asks) => {
    const before = await measured.cpuMs();
    const done = await measured.send(asks[kind], { connections: CONNECTIONS, ms: ROUND_MS });
    const count = done.kinds[kind]?.requests ?? 0;
    const { count: errors, said } = errorsOf(done);
    if (errors > 0) throw new Error(`the ${kind} route failed: ${said.join('; ')}`);
    return { rate: rateOf(done), cpuUs: (1000 * ((await measured.cpuMs()) - before)) / count };
  };
  for (const kind of ['bare', 'report'] as const) for (let i = 0; i < 3; i++) await spent(kind);
  const rounds = [];
  for (let i = 0; i < ROUNDS; i++) rounds.push([await spent('report'), await spent('bare')] as const);
  return {
    ratio: median(rounds.map(([own, other]) => own.rate / other.rate)),
    ratioOfCpu: median(rounds.map(([own, other]) => other.cpuUs / own.cpuUs)),
    reportsPerSecond: median(rounds.map(([own]) => own.rate)),
    barePerSecond: median(rounds.map(([, other]) => other.rate)),
    reportCpuUs: median(rounds.map(([own]) => own.cpuUs)),
    bareCpuUs: median(rounds.map(([, other]) => other.cpuUs)),
  };
}
