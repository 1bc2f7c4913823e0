import { batch, signal } from '@preact/signals';
import { type OwnPart, type PartKind, sameJson } from '../../core/index.ts';
import { openView, settle } from '../state/address.ts';
import { askForCatalogue, catalogue } from '../state/catalogue.ts';
import { answered, draft } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { engravingOf, spareName } from './called.ts';
import { bringTo, idOfRow, keepPlace } from './focus.ts';
import { type Laid, laid, layOut, putAside } from './laid.ts';
import { add, change, type Outcome, takeAway } from './server.ts';
import { complained, fresh, isChanged, judged, laidOut, type Slip, type Standing, standingIn } from './slip.ts';
import { OF, refusedInWords } from './told.ts';

/** Everything that is done with the drawer, each awaited and said. */

/** What was taken out since the page was opened, and can be put back. */
export interface TakenOut {
  standing: Standing;
  /** Its slip, with what was typed on it, where one lay open. */
  slip: Slip | undefined;
}
export const takenOut = signal<readonly TakenOut[]>([]);

/** What became of the last thing done with parts of a kind as a whole. */
export const saidOf = signal<Partial<Record<PartKind, string>>>({});
const say = (kind: PartKind, text: string): void => {
  saidOf.value = { [kind]: text };
};

const SILENT = 'The server does not answer. What you typed stays here';
function lying(kind: PartKind): Standing[] {
  const now = catalogue.peek();
  return typeof now === 'object' ? standingIn(now, kind) : [];
}

/**
 * Keeps what stands on a slip.
 * @param over what it takes the place of, if still that lies there; 'nothing' where it is to lie there anew
 */
export async function keep(one: Laid, over: Standing | 'nothing' = one.slip.peek().standing ?? 'nothing'): Promise<void> {
  if (one.busy.peek()) return;
  const slip = one.slip.peek();
  const { own, problems } = judged(slip);
  if (!own) {
    batch(() => {
      one.slip.value = complained(slip, true);
      one.said.value = `Not kept: ${problems.length === 1 ? 'one thing has' : `${problems.length} things have`} to be put right first.`;
    });
    return bringTo(one.key, problems[0]?.path ?? '');
  }
  if (over === slip.standing && !isChanged(slip)) {
    one.said.value = 'It lies here just so.';
    return;
  }
  one.busy.value = true;
  one.said.value = 'Being kept …';
  const outcome = await (over === 'nothing' ? add(own, slip.standing?.id) : change(over, own));
  one.busy.value = false;
  await settled(one, own, outcome);
}

async function settled(one: Laid, own: OwnPart, outcome: Outcome): Promise<void> {
  const back = keepPlace(one.key);
  if (outcome.state === 'done')
    batch(() => {
      const { id, version } = outcome;
      one.slip.value = { ...one.slip.peek(), standing: { id, version, own }, base: own.part, meanwhile: undefined };
      one.said.value = 'Kept.';
    });
  else if (outcome.state === 'refused')
    batch(() => {
      const told = outcome.problems.map((p) => ({ ...p, path: p.path.replace(/^\/part(?=\/|$)/, `/${one.kind}`) }));
      one.slip.value = { ...one.slip.peek(), told };
      one.said.value = `Not kept: ${refusedInWords(one.kind, outcome.problems)}`;
    });
  else
    one.said.value = outcome.state === 'silent' ? `${SILENT}: keep it again when it does.` : 'Not kept: see what became of it meanwhile.';
  if (outcome.state === 'silent') return;
  await askForCatalogue();
  back(one.id.peek());
}

/** What lies there now takes the place of what was typed. */
export function takeTheirs(one: Laid): void {
  const { meanwhile } = one.slip.peek();
  if (meanwhile === 'taken out') putAside(one);
  else if (meanwhile) {
    one.slip.value = laidOut(meanwhile);
    one.said.value = 'This is what stands there now.';
  }
}

/** What was typed takes the place of what lies there now, or lies there again. */
export function keepMine(one: Laid): Promise<void> {
  const { meanwhile } = one.slip.peek();
  return keep(one, meanwhile === 'taken out' ? 'nothing' : meanwhile);
}

/** Takes a part out of the drawer. */
export async function takeOut(standing: Standing): Promise<void> {
  const { kind, part } = standing.own;
  const outcome = await takeAway(standing);
  const one = laid.peek().find(({ id }) => id.peek() === standing.id);
  const name = `‘${part.name}’`;
  if (outcome.state === 'done') {
    batch(() => {
      takenOut.value = [...takenOut.peek(), { standing, slip: one?.slip.peek() }];
      if (one) putAside(one);
      say(kind, '');
    });
    bringTo(idOfRow(standing.id));
  } else if (outcome.state === 'changed')
    say(kind, `${name} was changed elsewhere meanwhile and still lies here: look at it, then take it out.`);
  else if (outcome.state === 'gone') say(kind, `${name} had been taken out elsewhere already.`);
  else say(kind, outcome.state === 'silent' ? `${SILENT}, and ${name} too.` : `Not taken out: ${refusedInWords(kind, outcome.problems)}`);
  if (outcome.state !== 'silent') await askForCatalogue();
}

/** Puts back what was taken out, under its old id, and lays its slip open again where one lay. */
export async function putBack(one: TakenOut): Promise<void> {
  const { standing, slip } = one;
  const { kind, part } = standing.own;
  const outcome = await add(standing.own, standing.id);
  if (outcome.state === 'silent') return say(kind, `${SILENT}, and ‘${part.name}’ too: put it back when it does.`);
  const again = outcome.state === 'refused' && outcome.problems.some(({ code }) => code === 'idTaken');
  if (outcome.state === 'refused' && !again) return say(kind, `Not put back: ${refusedInWords(kind, outcome.problems)}`);
  batch(() => {
    takenOut.value = takenOut.peek().filter((other) => other !== one);
    say(kind, again ? `‘${part.name}’ lies here again already.` : '');
  });
  await askForCatalogue();
  if (outcome.state === 'done' && slip) layOut({ ...slip, standing: { ...standing, version: outcome.version } });
  bringTo(idOfRow(standing.id));
}

/** The same once more, to be changed and kept as another. */
export function duplicate(one: Laid): void {
  const slip = one.slip.peek();
  const { part = {}, ...story } = slip.draft as { part?: { name?: string }; owned: boolean };
  const names = lying(slip.kind).map(({ own }) => own.part.name);
  const next = fresh(slip.kind, { ...part, name: spareName(part.name ?? '', names) }, story);
  bringTo(layOut({ ...next, base: slip.base }, 'A second one, not kept yet.').key, `/${slip.kind}/name`);
}

/** Puts a part's values into the pairing, and shows that. A link holds values, never what lies in a drawer. */
export function useInPairing(kind: PartKind, part: object): void {
  settle(withAt(draft.peek(), `/${kind}`, structuredClone(part)));
  openView('pairing');
  scrollTo(0, 0);
  document.querySelector<HTMLElement>('.views [aria-current]')?.focus({ preventScroll: true });
}

/** The same with what stands on a slip, kept or not. */
export function useSlip(one: Laid): void {
  const { kind, slip } = one;
  const blamed = judged(slip.peek()).problems?.find(({ path }) => path.startsWith(`/${kind}`));
  if (!blamed) {
    useInPairing(kind, (slip.peek().draft as { part: object }).part);
    return;
  }
  batch(() => {
    slip.value = complained(slip.peek(), true);
    one.said.value = 'No pairing can be worked out with it yet: put this right first.';
  });
  bringTo(one.key, blamed.path);
}

let last: Promise<void> = Promise.resolve();

/**
 * Keeps a part of the pairing with all that was measured of it; one that lies there under its name is laid open with it.
 * One at a time: pressed twice it is not there twice.
 */
export function keepOfPairing(kind: PartKind): Promise<void> {
  const next = (): Promise<void> => keepNext(kind);
  last = last.then(next, next);
  return last;
}

async function keepNext(kind: PartKind): Promise<void> {
  const part = { ...answered.peek().pairing[kind], name: answered.peek().pairing[kind].name ?? engravingOf(kind, answered.peek()) };
  const same = lying(kind).find(({ own }) => sameJson(own.part, part));
  if (same) {
    say(kind, `It lies here already: ‘${part.name}’.`);
    return bringTo(idOfRow(same.id));
  }
  const namesake = lying(kind).find(({ own }) => own.part.name === part.name);
  if (namesake) {
    const one = layOut(laidOut(namesake));
    batch(() => {
      one.slip.value = { ...one.slip.peek(), draft: { ...one.slip.peek().draft, part } };
      one.said.value =
        'Here with the values of the pairing: Keep puts them in the place of those that lay here, Duplicate makes a second one.';
    });
    return bringTo(one.key, '');
  }
  const one = layOut(fresh(kind, part), `The ${OF[kind]} of the pairing.`);
  await keep(one);
}
