import type { NetworkInterfaceInfo } from 'node:os';
import { ENTRANCE } from './key.ts';
import { isEverywhere, isOpen, type Reach } from './reach.ts';

/** Where the server can be opened, in the sentences that it prints when it starts. */

type Interfaces = NodeJS.Dict<NetworkInterfaceInfo[]>;

const at = (host: string, port: number): string => `http://${host.includes(':') ? `[${host}]` : host}:${port}`;

/** On the machine itself; of a server that listens everywhere the one that always works. */
export const addressHere = ({ host }: Reach, bound: string, port: number): string =>
  at(isEverywhere({ host, names: [] }) ? (bound === '::' ? '::1' : '127.0.0.1') : bound, port);

/** From other devices: the machine's addresses in its networks, then the names that it answers to. */
function addressesElsewhere(reach: Reach, bound: string, port: number, interfaces: Interfaces): string[] {
  // An address of one wire only (fe80) means nothing without saying which wire, and no browser takes that.
  const own = Object.values(interfaces).flatMap((list = []) =>
    list.filter(({ internal, family, address }) => !internal && !address.startsWith('fe80') && (family === 'IPv4' || bound === '::')),
  );
  const listened = isEverywhere(reach) ? own.map(({ address }) => address) : isOpen({ ...reach, names: [] }) ? [bound] : [];
  return [...new Set([...listened, ...reach.names])].map((host) => at(host, port));
}

const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/** What a server that others can reach says of it, a line each; nothing where none can. */
export function openingWords(reach: Reach, bound: string, port: number, interfaces: Interfaces, key: string | undefined): string[] {
  if (!isOpen(reach)) return [];
  const elsewhere = addressesElsewhere(reach, bound, port, interfaces);
  const listens = isOpen({ ...reach, names: [] });
  return [
    ...(elsewhere.length > 0
      ? [`Other devices may read it at ${listed(elsewhere)}.`]
      : ['No other device reaches it now: this machine has no address in a network.']),
    ...(listens
      ? []
      : ['It listens on this machine alone, and answers to those names only through what hands requests on here: HOST=0.0.0.0 opens it.']),
    ...(isEverywhere(reach) && reach.names.length === 0
      ? ['It answers to any address in digits, and to no name but localhost: ALLOWED_HOSTS=bench.local would add that one.']
      : []),
    ...(elsewhere[0]
      ? [
          ...(elsewhere.length > 1 ? ['It is the same at each of them; a device keeps to the one that it can reach.'] : []),
          `A device that shall write as well opens this once: ${elsewhere[0]}${ENTRANCE}?key=${key}`,
        ]
      : []),
    'Whoever has this key can change the drawer, and in the network it can be read on its way. The next start makes another.',
  ];
}
