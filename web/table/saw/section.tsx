import { useEffect } from 'preact/hooks';
import { nameOf } from '../../../core/index.ts';
import { MOST_SIGHTINGS, SIGHTING_KINDS, type SightingKind } from '../../../core/table.ts';
import { answered } from '../../state/draft.ts';
import { complaint } from '../../state/words.ts';
import '../../styles/table-saw.css';
import '../../styles/found.css';
import '../../styles/subject.css';
import { FoundOf } from './found.tsx';
import { RowOf } from './row-of.tsx';
import { OFFERED } from './rows.ts';
import { change, done, looked, sightings } from './state.ts';
import { changesOf, Tightens } from './tightens.tsx';

/** What was seen on the table, and what it says of the pairing. */
export function SawSection() {
  useEffect(() => sightings.follow(), []);
  const { rows } = sightings.value.value;
  const { saw, problems } = looked.value;
  const opening = problems.get(-1);
  const add = (kind: SightingKind): void => {
    change({ rows: [...rows, { kind, texts: {} }] });
    done();
    const first = rows.length;
    requestAnimationFrame(() => document.querySelector<HTMLInputElement>(`[id^="saw-${first}-"]`)?.focus());
  };
  return (
    <div class="saw">
      {sightings.fault.value && (
        <p class="notice" role="alert">
          What this address says was seen could not be read: {sightings.fault.value}.
        </p>
      )}
      {rows.length === 0 && (
        <p class="sentence">
          Nothing is seen yet. A ruler in the picture tells the magnification and the relay's true focal length; an even wall tells where
          the exit pupil sits, which no ruler reaches.
        </p>
      )}
      <ol class="saw-rows">
        {rows.map((row, i) => (
          <RowOf
            key={`${i} ${row.kind}`}
            row={row}
            at={i}
            first={rows.findIndex(({ kind }) => kind === row.kind) === i}
            remove={() => {
              change({ rows: rows.filter((_, j) => j !== i) });
              done();
              document.getElementById('saw-add')?.focus();
            }}
          />
        ))}
      </ol>
      {rows.filter(({ kind }) => kind === 'wall').length > 1 && <OpeningOf />}
      {opening && <p class="complaint">{complaint(opening)}</p>}
      {rows.length < MOST_SIGHTINGS && (
        <p class="further" id="saw-add" tabIndex={-1}>
          I saw{' '}
          {SIGHTING_KINDS.map((kind, i) => (
            <span key={kind}>
              {i === 0 ? '' : i === SIGHTING_KINDS.length - 1 ? ' or ' : ', '}
              <button type="button" class="lead" onClick={() => add(kind)}>
                {OFFERED[kind]}
              </button>
            </span>
          ))}
          .
        </p>
      )}
      {saw && <FoundOf saw={saw} />}
      {saw && <Tightens changes={changesOf(saw.figures)} />}
      {saw && saw.results.length > 0 && (
        <p class="hint">
          Each ± holds 95 % of what the readings and the other numbers in doubt, anywhere inside their own ±, could make of it. It is taken
          as the ± of a measured number, about an eighth wider than the ± of all other figures here are combined.
        </p>
      )}
    </div>
  );
}

/** Which opening two walls are to tell beside the exit pupil. */
function OpeningOf() {
  const { stops = [], relay } = answered.value.pairing;
  const paths = [
    '/relay/clearApertureMm',
    ...(relay.kind === 'camera-lens' ? ['/relay/entrancePupilDiameterMm'] : []),
    ...stops.map((_, i) => `/stops/${i}/diameterMm`),
  ];
  const called = (path: string): string => {
    const ring = /^\/stops\/(\d+)/.exec(path)?.[1];
    return ring === undefined ? nameOf(path) : `the opening of ${stops[Number(ring)]?.label ?? `ring ${Number(ring) + 1}`}`;
  };
  return (
    <p class="further">
      <label for="saw-opening">Beside the exit pupil they are to tell</label>{' '}
      <select
        id="saw-opening"
        value={sightings.value.value.opening ?? ''}
        onChange={({ currentTarget: { value } }) => {
          const { opening: _, ...rest } = sightings.value.peek();
          sightings.take(value === '' ? rest : { ...rest, opening: value });
          done();
        }}
      >
        <option value="">the relay's clear opening, where that is in doubt</option>
        {paths.map((path) => (
          <option key={path} value={path}>
            {called(path)}
          </option>
        ))}
      </select>
    </p>
  );
}
