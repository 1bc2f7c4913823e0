import { computed } from '@preact/signals';
import { percent, short, type Verdict } from '../../core/index.ts';
import { DASH } from '../plates/strokes.ts';
import { answered } from '../state/draft.ts';
import { varied, variedStands } from '../state/varied.ts';
import type { Varied, Window } from '../state/vary.ts';
import { Curve } from './curve.tsx';
import type { Drawing } from './drawing.ts';

const WORDS: Record<Verdict, string> = { covers: 'covers', crops: 'crops', misses: 'misses', undecided: 'undecided' };
const STYLE = { covers: 'solid', undecided: 'dotted', crops: 'thin', misses: 'thin' } as const;

const NOTHING: Varied = { tried: [], windows: [], now: 0, rough: false };

const drawing = computed((): Drawing => {
  const { tried, windows, now } = varied.value ?? NOTHING;
  const line = (of: 'coveredShare' | 'cornerIllumination') =>
    tried.flatMap((t) => (t[of] === undefined ? [] : [{ x: t.focalLengthMm, y: 100 * (t[of] as number) }]));
  const covered = line('coveredShare');
  const light = line('cornerIllumination');
  const lightFirst = halfway(light) < halfway(covered);
  return {
    x: {
      title: "the relay's focal length, mm",
      least: tried[0]?.focalLengthMm ?? 0,
      greatest: tried.at(-1)?.focalLengthMm ?? 1,
    },
    y: { title: 'share' },
    lines: [
      {
        points: covered,
        dash: DASH.covered,
        width: 1.75,
        label: { text: 'picture covered', at: halfway(covered), side: lightFirst ? 'after' : 'before' },
      },
      {
        points: light,
        dash: DASH.light,
        width: 1.25,
        label: { text: 'light in the corner', at: halfway(light), side: lightFirst ? 'before' : 'after' },
      },
    ],
    marks: [{ along: 'x', at: now, text: 'yours', dash: DASH.here }],
    bands: windows.map((w, i) => ({
      from: w.from,
      to: w.to,
      text: w.verdict === 'undecided' ? (mayCover(windows, i) ? 'may cover' : '') : WORDS[w.verdict],
      style: STYLE[w.verdict],
    })),
  };
});

/** Where a line has room for its name: on its way past a half, else well along it. */
function halfway(points: Drawing['lines'][number]['points']): number {
  const at = points.findIndex(({ y }) => y >= 50);
  return at > 0 ? at : Math.floor(points.length * (at === 0 ? 0.15 : 0.75));
}

const rows = computed(() =>
  (varied.value ?? NOTHING).tried.map((t) => [
    short(t.focalLengthMm, 4),
    t.magnification === undefined ? 'not known' : `${short(t.magnification)}×`,
    t.coveredShare === undefined ? 'not known' : percent(t.coveredShare),
    t.cornerIllumination === undefined ? 'not known' : percent(t.cornerIllumination),
    WORDS[t.verdict],
  ]),
);

const COLUMNS = ['focal length, mm', 'magnification', 'picture covered', 'light in the corner', 'answer'];

/** What other focal lengths of the relay would do, and the window that covers. */
export function FocalLengths() {
  if (!varied.value)
    return (
      <div class="waits">
        <p class="hint">Other focal lengths are being tried.</p>
      </div>
    );
  const { tried, rough } = varied.value;
  return (
    <Curve
      id="vary-caption"
      says={captionOf(varied.value)}
      drawing={tried.length > 1 ? drawing.value : undefined}
      table={{
        title: rough ? 'Some of these focal lengths in numbers' : 'The same focal lengths in numbers',
        columns: COLUMNS,
        rows: () => rows.value,
      }}
      following={!variedStands.value}
    />
  );
}

/** Open between crop and miss is no matter here: only where an open window may reach the corners. */
function mayCover(windows: readonly Window[], i: number): boolean {
  const beside = [windows[i - 1], windows[i + 1]].flatMap((w) => w?.verdict ?? []);
  return beside.length < 2 || beside.includes('covers');
}

function captionOf({ tried, windows, now }: Varied): string {
  const first = tried[0]?.focalLengthMm ?? 0;
  const last = tried.at(-1)?.focalLengthMm ?? 0;
  const reach = ({ from, to }: Window): string =>
    to >= last ? `from ${short(from)} mm up` : from <= first ? `up to ${short(to)} mm` : `from ${short(from)} to ${short(to)} mm`;
  const of = (verdict: Verdict): string =>
    windows
      .filter((w, i) => w.verdict === verdict && (verdict !== 'undecided' || mayCover(windows, i)))
      .map(reach)
      .join(' and ');
  const covers = of('covers');
  const open = of('undecided');
  // What covers is told over the whole ±: of a marking that is loose, more is needed than of a length that was measured.
  const f = answered.value.answers.relayFocalLengthMm;
  const loose = f.state === 'known' && f.low !== undefined && f.high !== undefined && f.high - f.low > 0.002 * now;
  const which = loose ? 'relay marked as loosely as yours' : 'relay';
  const yours = `All else held; yours has ${short(now)} mm.`;
  const maybe = open ? `; ${open} it may cover` : '';
  if (covers) return `A ${which} covers the picture ${covers}${maybe}. ${yours}`;
  return `No ${which} from ${short(first)} to ${short(last)} mm is sure to cover the picture${maybe}. ${yours}`;
}
