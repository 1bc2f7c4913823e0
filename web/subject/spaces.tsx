import { useEffect, useRef, useState } from 'preact/hooks';
import { commit } from '../state/address.ts';
import { change, wish } from '../state/wishing.ts';
import { spacesFrom, spacesText } from './spaces-read.ts';

const WRONG = 'wish-spaces-wrong';

/** The spacings that are tried, as one line of lengths. */
export function Spaces() {
  const [typing, setTyping] = useState<string | undefined>(undefined);
  const [fault, setFault] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const stands = spacesText(wish.value.infinitySpacesMm);
  // What another wish brings takes the place of what was typed and left.
  useEffect(() => {
    if (document.activeElement === input.current) return;
    setTyping(undefined);
    setFault('');
  }, [stands]);
  const text = typing ?? stands;
  const settle = (): void => {
    const read = spacesFrom(text);
    setFault(read.fault ?? '');
    // What gives no answer stays to be put right.
    if (read.spaces) setTyping(undefined);
    commit();
  };
  return (
    <span class="blank">
      <input
        ref={input}
        type="text"
        inputMode="text"
        autocomplete="off"
        spellcheck={false}
        maxLength={80}
        aria-label="Infinity spaces that are tried, in mm"
        aria-invalid={fault ? true : undefined}
        aria-describedby={fault ? WRONG : undefined}
        style={{ width: `${Math.max(5, text.length + 1)}ch` }}
        value={text}
        onInput={({ currentTarget: { value } }) => {
          setTyping(value);
          const { spaces } = spacesFrom(value);
          if (!spaces) return;
          setFault('');
          change({ infinitySpacesMm: spaces });
        }}
        onKeyDown={({ key }) => {
          if (key === 'Enter') settle();
        }}
        onBlur={settle}
      />{' '}
      mm
      {fault && (
        <span class="complaint" id={WRONG} role="status">
          {fault}
        </span>
      )}
    </span>
  );
}
