import '../styles/radios.css';

/** One choice of a few, told in full. */
export function Radios<Name extends string>(props: {
  legend: string;
  name: string;
  options: Readonly<Record<Name, string>>;
  value: string;
  onChoose(name: Name): void;
}) {
  return (
    <fieldset class="radios">
      <legend>{props.legend}</legend>
      {(Object.entries(props.options) as [Name, string][]).map(([name, words]) => (
        <label key={name}>
          <input type="radio" name={props.name} value={name} checked={props.value === name} onChange={() => props.onChoose(name)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
