import { GROUPS, type GroupName } from '../../core/index.ts';
import { Figure } from './figure.tsx';
import { GROUP_TITLES } from './names.ts';

/** Every figure of the report, in its groups. */
export function Figures() {
  return (
    <div class="groups">
      {(Object.keys(GROUPS) as GroupName[]).map((group) => (
        <section key={group} aria-labelledby={`group-${group}`}>
          <h2 id={`group-${group}`}>{GROUP_TITLES[group]}</h2>
          <ul class="list">
            {GROUPS[group].map(({ id }) => (
              <Figure key={id} id={id} />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
