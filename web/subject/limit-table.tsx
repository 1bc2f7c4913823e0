import { type LimitAnswer, nameOfLimit, toldIn } from '../../core/choosing.ts';
import { capital, percent } from '../../core/index.ts';
import { Scroll } from '../charts/scroll.tsx';

const has = (limit: LimitAnswer): string =>
  limit.value !== undefined
    ? toldIn(limit, limit.value)
    : limit.state === 'unlimited'
      ? 'without limit'
      : limit.state === 'none'
        ? 'none'
        : 'not known';

/** By how much it is met or missed. */
const room = ({ margin, limit, meets, surely }: LimitAnswer): string => {
  const far = margin === undefined || limit === 0 ? '' : `${percent(Math.abs(margin))} `;
  const way = meets ? `${far}to spare` : `${far}short`;
  return far === '' && margin === undefined ? (meets ? 'met' : 'missed') : surely ? way : `${way}, not surely`;
};

/** Every limit of the wish: what is asked, what there is, and by how much. */
export function LimitTable({
  limits,
  bites,
  title,
}: {
  limits: readonly LimitAnswer[];
  bites?: LimitAnswer['name'] | undefined;
  title: string;
}) {
  if (limits.length === 0) return <p class="hint">Nothing was asked of it.</p>;
  return (
    <Scroll title={title}>
      <table class="limits">
        <thead>
          <tr>
            <th scope="col">limit</th>
            <th scope="col">asked</th>
            <th scope="col">has</th>
            <th scope="col">room</th>
          </tr>
        </thead>
        <tbody>
          {limits.map((limit) => (
            <tr key={limit.name} class={limit.name === bites && !limit.surely ? 'bites' : undefined}>
              <th scope="row">
                {limit.meets ? '' : '☞ '}
                {capital(nameOfLimit(limit.name))}
              </th>
              <td>{toldIn(limit, limit.limit)}</td>
              <td>{has(limit)}</td>
              <td>{room(limit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
