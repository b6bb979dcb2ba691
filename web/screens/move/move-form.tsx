/** Which move, and its numbers as typed. */
import { capital } from '../../../engine/quantity/words.ts';
import { MOVES } from '../../../engine/simulate/index.ts';
import type { MoveKind } from './parts.ts';
import type { Fields } from './read-move.ts';

interface Props {
  readonly kind: MoveKind;
  readonly kinds: readonly MoveKind[];
  readonly fields: Fields;
  /** What is wrong with a field, by its name. */
  readonly fault: Fields;
  readonly onKind: (kind: MoveKind) => void;
  readonly onField: (key: string, text: string) => void;
}

const NAMES: Readonly<Record<MoveKind, string>> = {
  rapid: 'Rapid move',
  step: 'Sudden step',
  ramp: 'Steady run',
  reversal: 'There and back',
  'small-steps': 'Many small steps',
  circle: 'Circle of two axes',
  'force-step': 'A push against the standing axis',
  'brake-from-rapid': 'Hard stop from rapid',
  'power-cut': 'The mains fail at speed',
  drop: 'Drive off while it holds',
};

/** What is chosen, as a person says it. */
const CHOICES: Readonly<Record<string, string>> = {
  fitted: 'as fitted',
  none: 'without it',
};

export function MoveForm({ kind, kinds, fields, fault, onKind, onField }: Props) {
  return (
    <>
      <h2 id="which-move">What it shall do</h2>
      <div>
        <label htmlFor="move-kind">Move</label>
        <select id="move-kind" value={kind} onChange={(event) => onKind(event.target.value as MoveKind)}>
          {kinds.map((each) => (
            <option key={each} value={each}>
              {NAMES[each]}
            </option>
          ))}
        </select>
        <p className="small soft">{MOVES[kind].says}</p>
      </div>
      <div className="move-fields">
        {Object.entries(MOVES[kind].fields).map(([key, { name, options }]) => {
          const wrong = fault[key];
          return (
            <div key={`${kind} ${key}`} className="field">
              <label htmlFor={`move-${key}`}>{capital(name)}</label>
              {options ? (
                <select
                  id={`move-${key}`}
                  value={fields[key] ?? ''}
                  onChange={(event) => onField(key, event.target.value)}
                >
                  {options.map((each) => (
                    <option key={each} value={each}>
                      {CHOICES[each] ?? each}
                    </option>
                  ))}
                </select>
              ) : (
                <input
                  id={`move-${key}`}
                  value={fields[key] ?? ''}
                  autoComplete="off"
                  spellCheck={false}
                  aria-invalid={wrong !== undefined}
                  aria-describedby={`move-${key}-said`}
                  onChange={(event) => onField(key, event.target.value)}
                />
              )}
              <p id={`move-${key}-said`} className="said" aria-live="polite">
                {wrong && <span className="bad">{wrong}</span>}
              </p>
            </div>
          );
        })}
      </div>
    </>
  );
}
