/** One field of a piece of work. */
import { capital } from '../../../engine/quantity/words.ts';
import type { WorkField } from '../../../engine/work/index.ts';

interface Props {
  readonly id: string;
  readonly field: WorkField;
  readonly value: string;
  readonly change: (value: string) => void;
  /** When the field is left, or Enter pressed; an option counts at once. */
  readonly keep?: (value: string) => void;
  readonly fault?: string | undefined;
}

export function WorkInput({ id, field, value, change, keep, fault }: Props) {
  const { name, options, usual, example, needed } = field;
  const described = fault ? `${id}-fault` : undefined;
  return (
    <label htmlFor={id}>
      <span>{capital(name)}</span>
      {options ? (
        <select
          id={id}
          value={Object.hasOwn(options, value) ? value : ''}
          aria-invalid={fault !== undefined}
          aria-describedby={described}
          onChange={(event) => {
            change(event.target.value);
            keep?.(event.target.value);
          }}
        >
          <option value="">{usual ? `usual: ${usual}` : 'choose'}</option>
          {Object.entries(options).map(([option, words]) => (
            <option key={option} value={option}>
              {words}
            </option>
          ))}
        </select>
      ) : (
        <input
          id={id}
          value={value}
          maxLength={80}
          autoComplete="off"
          spellCheck={false}
          placeholder={usual ?? (needed ? `such as ${example}` : example)}
          aria-invalid={fault !== undefined}
          aria-describedby={described}
          onChange={(event) => change(event.target.value)}
          onBlur={() => keep?.(value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && keep) {
              event.preventDefault();
              keep(value);
            }
          }}
        />
      )}
      {fault && (
        <span id={described} className="small bad fault">
          {fault}
        </span>
      )}
    </label>
  );
}
