import { isIP } from 'node:net';
import { domainToASCII } from 'node:url';

/** From where the server is reached, and under which names it answers. */
export interface Reach {
  /** The name or address that it listens on. */
  readonly host: string;
  /** Names that it answers to besides that one and loopback, in small letters. */
  readonly names: readonly string[];
}

const LOOPBACK_NAMES = ['localhost', '127.0.0.1', '[::1]'];
const ANYWHERE = ['0.0.0.0', '::'];

/** `::ffff:127.0.0.1` is how a socket for both families tells of the older one. */
const isLoopback = (address: string): boolean => /^(::1|(::ffff:)?127(\.\d{1,3}){3})$/i.test(address);

/** Whether others than this machine can reach it, or may come through something that stands before it. */
export const isOpen = ({ host, names }: Reach): boolean => (host !== 'localhost' && !isLoopback(host)) || names.length > 0;

/** Whether it is listened on at every address that the machine has. */
export const isEverywhere = ({ host }: Reach): boolean => ANYWHERE.includes(host);

/** `name`, `name:port` or `[v6]:port` -> the name in lower case, or undefined where it is neither. */
const hostName = (host: string): string | undefined => host.toLowerCase().match(/^(\[[0-9a-f:.]+\]|[a-z0-9._-]+)(?::\d{1,5})?$/)?.[1];

const bare = (name: string): string => name.replace(/^\[|\]$/g, '');

/**
 * Whether a request that names this Host means this server. A name can be pointed at a stranger's address, or a
 * stranger's name at ours; an address in digits cannot: the one that the request came in at is always ours, and
 * where it is listened on everywhere any is.
 *
 * @param cameInAt the address of ours that the request was sent to, where there is a connection
 */
export function isOurs(host: string, reach: Reach, cameInAt?: string): boolean {
  const name = hostName(host);
  if (name === undefined) return false;
  const plain = bare(name);
  if (LOOPBACK_NAMES.includes(name) || plain === reach.host.toLowerCase() || reach.names.includes(plain)) return true;
  return isIP(plain) > 0 && (isEverywhere(reach) || plain === cameInAt?.replace(/^::ffff:/i, ''));
}

/** What is put before a request by what hands it on: it then comes from elsewhere, whoever brought it here. */
const HANDED_ON = ['forwarded', 'x-forwarded-for', 'x-real-ip', 'via'];

/**
 * Whether a request comes from this machine itself.
 *
 * @param connection what it came over: one that has broken off tells no address any more, and counts as from
 * elsewhere; undefined where it was asked within the process
 */
export function isFromHere(
  connection: { remoteAddress?: string | undefined } | undefined,
  header: (name: string) => string | undefined,
): boolean {
  if (connection === undefined) return true;
  return (
    isLoopback(connection.remoteAddress ?? '') &&
    LOOPBACK_NAMES.includes(hostName(header('host') ?? '') ?? '') &&
    !HANDED_ON.some((name) => header(name))
  );
}

const LABEL = /^[a-z0-9_]([a-z0-9_-]{0,61}[a-z0-9_])?$/;

/** The names of ALLOWED_HOSTS, or in a sentence what is wrong with them. */
export function namesIn(text: string): { names: string[]; fault?: undefined } | { fault: string; names?: undefined } {
  if (text.trim() === '') return { names: [] };
  const names: string[] = [];
  for (const given of text.split(',').map((part) => part.trim())) {
    const plain = bare(given);
    const name = isIP(plain) > 0 ? plain.toLowerCase() : domainToASCII(given);
    const fits = isIP(plain) > 0 || (name !== '' && name.length <= 253 && name.split('.').every((label) => LABEL.test(label)));
    if (!fits || /[/:@?#%\s]/.test(isIP(plain) > 0 ? '' : given))
      return {
        fault: `ALLOWED_HOSTS=${text} holds ${given === '' ? 'an empty name' : `"${given}", which is no name`}: give names such as bench.local, without http:// and without a port, commas between them.`,
      };
    names.push(name);
  }
  return { names: [...new Set(names)] };
}
