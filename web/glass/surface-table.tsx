import { steps, valueAt } from '../../core/index.ts';
import { Complaint, toldAt } from '../fields/complaint.tsx';
import { fieldAt, inputId } from '../fields/names.ts';
import { Typed } from '../fields/typed.tsx';
import { settle } from '../state/address.ts';
import { draft, edit } from '../state/draft.ts';
import { numberTyped, withAt } from '../state/json.ts';
import {
  FEWEST_SURFACES,
  glassTyped,
  type Listing,
  MOST_SURFACES,
  radiusTyped,
  semiTyped,
  surfaceName,
  withoutSurface,
  withSurface,
} from './listing.ts';

/** The names of the glasses, for the lines that ask for one. */
export const GLASS_LIST = 'glass-names';

/** The surfaces of one lens: a row each, with the space behind it. */
export function SurfaceTable({ path, caption }: { path: string; caption: string }) {
  const listing = valueAt(draft.value, steps(path)) as Listing;
  const count = listing.radiiMm.length;
  const replace = (next: Listing): void => settle(withAt(draft.value, path, next));
  return (
    <div class="surfaces" id={inputId(path)} tabIndex={-1}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">surface</span>
            </th>
            <th scope="col">radius, mm</th>
            <th scope="col">thickness, mm</th>
            <th scope="col">glass</th>
            <th scope="col">clear up to, mm</th>
            <th scope="col">
              <span class="unseen">take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {listing.radiiMm.map((_, i) => (
            <Surface
              key={i}
              path={path}
              listing={listing}
              i={i}
              remove={count > FEWEST_SURFACES ? () => replace(withoutSurface(listing, i)) : undefined}
            />
          ))}
        </tbody>
      </table>
      {['', '/radiiMm', '/thicknessesMm', '/glasses', '/semiAperturesMm'].map((list) => (
        <Complaint key={list} id={`${inputId(path + list)}-wrong`} found={toldAt(path + list).filter((p) => p.path === path + list)} />
      ))}
      {count < MOST_SURFACES && (
        <p class="choices">
          <button type="button" class="plain" onClick={() => replace(withSurface(listing))}>
            Add a surface behind
          </button>
        </p>
      )}
    </div>
  );
}

interface SurfaceProps {
  path: string;
  listing: Listing;
  i: number;
  remove: (() => void) | undefined;
}

function Surface({ path, listing, i, remove }: SurfaceProps) {
  const last = i === listing.radiiMm.length - 1;
  const cells = ['radiiMm', ...(last ? [] : ['thicknessesMm', 'glasses']), 'semiAperturesMm'].map((list) => `${path}/${list}/${i}`);
  const wrong = cells.filter((cell) => toldAt(cell).length > 0);
  const [radius, thickness, glass] = cells as [string, string, string];
  const semi = cells.at(-1) as string;
  return (
    <>
      <tr>
        <th scope="row">{surfaceName(i, path.endsWith('/second'))}</th>
        <td>
          <Cell path={radius} plain onType={(text) => edit(radius, radiusTyped(text, numberTyped(text)) ?? '')} />
        </td>
        {last ? (
          <td colSpan={2} class="air">
            air
          </td>
        ) : (
          <>
            <td>
              <Cell path={thickness} onType={(text) => edit(thickness, numberTyped(text) ?? '')} />
            </td>
            <td class="glass-name">
              <Cell path={glass} plain list={GLASS_LIST} onType={(text) => edit(glass, glassTyped(text, numberTyped(text)) ?? '')} />
            </td>
          </>
        )}
        <td>
          <Cell
            path={semi}
            placeholder="open"
            onType={(text) => edit(`${path}/semiAperturesMm`, semiTyped(listing, i, numberTyped(text)))}
          />
        </td>
        <td>
          {remove && (
            <button type="button" class="out" aria-label={`Take surface ${i + 1} out`} onClick={remove}>
              −
            </button>
          )}
        </td>
      </tr>
      {wrong.length > 0 && (
        <tr class="complaints">
          <td colSpan={6}>
            {wrong.map((cell) => (
              <Complaint key={cell} id={`${inputId(cell)}-wrong`} found={toldAt(cell)} />
            ))}
          </td>
        </tr>
      )}
    </>
  );
}

interface CellProps {
  path: string;
  /** Words are as good as numbers here, and a minus is wanted on the keyboard. */
  plain?: boolean;
  list?: string;
  placeholder?: string;
  onType(text: string): void;
}

function Cell({ path, plain, list, placeholder, onType }: CellProps) {
  const here = valueAt(draft.value, steps(path));
  return (
    <Typed
      id={inputId(path)}
      label={fieldAt(path)?.label}
      value={here === undefined || here === null ? '' : String(here).replace(/^-/, '−')}
      placeholder={placeholder}
      numeric={!plain}
      list={list}
      wrong={toldAt(path).length > 0 ? `${inputId(path)}-wrong` : undefined}
      onType={onType}
    />
  );
}
