import type { ComponentChildren } from 'preact';
import type { SheetContents } from './contents.ts';

/** The sheet as it is printed and saved: nothing in it leads anywhere but its link. */
export function SheetPage({ contents, drawing }: { contents: SheetContents; drawing: ComponentChildren }) {
  const { title, on, parts, verdict, sentence, blocks, guesses, cautions, blanks, link } = contents;
  return (
    <article class="sheet" aria-label="The sheet">
      <header>
        <h3>{title}</h3>
        <p>
          {parts.join(' · ')}
          <time dateTime={on}>{on}</time>
        </p>
      </header>
      <p class="sheet-answer">
        <strong>{verdict}</strong> {sentence}
      </p>
      {drawing && <figure class="plate rig">{drawing}</figure>}
      <div class="sheet-blocks">
        {blocks.map((block) => (
          <section key={block.title}>
            <h4>{block.title}</h4>
            {block.says.map((text) => (
              <p key={text}>{text}</p>
            ))}
            {block.list.length > 0 && (
              <ol>
                {block.list.map((item, i) => (
                  <li key={`${i}${item}`}>{item}</li>
                ))}
              </ol>
            )}
            {block.lines.length > 0 && (
              <dl>
                {block.lines.map(([name, value]) => (
                  <div key={name}>
                    <dt>{name}</dt>
                    <dd>{value}</dd>
                  </div>
                ))}
              </dl>
            )}
          </section>
        ))}
        <Listed title="Rests on guesses: measure the first of these first" items={guesses} />
        <Listed title="Mind" items={cautions} />
      </div>
      <ul class="sheet-blanks" aria-label="To be written in">
        {blanks.map((blank) => (
          <li key={blank}>{blank}</li>
        ))}
      </ul>
      <p class="sheet-link">
        Back to this rig: <a href={link}>{link.replace(/[?#].*$/, '…')}</a>
      </p>
    </article>
  );
}

function Listed({ title, items }: { title: string; items: readonly string[] }) {
  if (items.length === 0) return null;
  return (
    <section>
      <h4>{title}</h4>
      <ul>
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </section>
  );
}
