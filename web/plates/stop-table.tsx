import { short } from '../../core/index.ts';
import { Scroll } from '../charts/scroll.tsx';
import { Lead } from '../fields/lead.tsx';
import { report } from '../state/draft.ts';
import type { Scene } from './path-geometry.ts';

/** The stops in numbers: the drawing for those who read rather than look. */
export function StopTable({ scene, narrow, cutting }: { scene: Scene; narrow: boolean; cutting: ReadonlySet<number> }) {
  const { cuts } = report.value.vignetting;
  return (
    <details class="fold" open={narrow && cutting.size > 0 ? true : undefined}>
      <summary>Every stop in the way</summary>
      <Scroll title="Every stop in the way">
        <table class="wide">
          <thead>
            <tr>
              <th scope="col">stop</th>
              <th scope="col">opening, mm</th>
              <th scope="col">from the shoulder, mm</th>
              <th scope="col">cuts from, mm off the middle</th>
              <th scope="col">share of the corner's loss</th>
              <th scope="col">clears the corner at</th>
            </tr>
          </thead>
          <tbody>
            {scene.stops.map((stop, i) => {
              const cut = cuts.find((c) => c.stop === stop.label);
              const { diameterMm, infinitySpaceMm } = cut?.clearsAt ?? {};
              const clears = [
                ...(diameterMm === undefined ? [] : [`${short(diameterMm)} mm opening`]),
                ...(infinitySpaceMm === undefined ? [] : [`${short(infinitySpaceMm)} mm space`]),
              ];
              return (
                <tr key={`${stop.path}${stop.label}`} class={cutting.has(i) ? 'bites' : ''}>
                  <th scope="row">
                    <Lead path={stop.path}>{stop.label}</Lead>
                  </th>
                  <td>{short(2 * stop.half)}</td>
                  <td>{short(stop.z)}</td>
                  <td>{cut && Number.isFinite(cut.onsetRadiusMm) ? short(cut.onsetRadiusMm) : 'does not'}</td>
                  <td>{cut ? short(cut.shareOfCornerLoss, 2) : 'none'}</td>
                  <td>{cut ? clears.join(', or ') || 'no single change' : 'clear'}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
