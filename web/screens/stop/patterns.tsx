/** Ways to stop to lay out, what suits this machine best first. */
import { ONLY_TO_LOOK, PATTERNS, type Pattern } from '../../../engine/circuit/stop/index.ts';
import type { Refit, StopCircuit } from '../../../engine/refit/types.ts';
import type { Choice } from './look-worker.ts';

interface Props {
  readonly refit: Refit;
  readonly choice: Choice | undefined;
  readonly record: (next: StopCircuit) => void;
}

export function Patterns({ refit, choice, record }: Props) {
  const { stop } = refit;
  if (!choice)
    return (
      <p role="status" className="small soft">
        Finding out which way to stop suits this machine …
      </p>
    );
  const cards = (
    <ol className="stop-patterns">
      {choice.ranked.flatMap(({ id, why }, at) => {
        const pattern = PATTERNS.find((each) => each.id === id);
        return pattern
          ? [
              <Card
                key={id}
                pattern={pattern}
                why={why}
                best={at === 0}
                again={stop?.pattern === id}
                lay={() => record(pattern.make(choice.moves))}
              />,
            ]
          : [];
      })}
    </ol>
  );
  if (stop === null)
    return (
      <section aria-labelledby="stop-choose">
        <h2 id="stop-choose">Choose a way to stop</h2>
        <p className="small soft">What suits this machine best, by what is known of it, stands first.</p>
        {cards}
      </section>
    );
  const now = PATTERNS.find(({ id }) => id === stop.pattern);
  return (
    <details className="sheet">
      <summary>{now ? `Laid out as: ${now.name}` : 'Drawn by hand'}. Lay out another in its place</summary>
      {cards}
    </details>
  );
}

interface CardProps {
  readonly pattern: Pattern;
  readonly why: string;
  readonly best: boolean;
  readonly again: boolean;
  readonly lay: () => void;
}

function Card({ pattern: { id, name, need, reach, limits, warning }, why, best, again, lay }: CardProps) {
  const does = `${again ? 'Lay it out again' : 'Lay it out'}${warning ? ` (${ONLY_TO_LOOK})` : ''}`;
  return (
    <li className="sheet" data-pattern={id}>
      <h3>{name}</h3>
      {warning && (
        <p className="small">
          <strong>{ONLY_TO_LOOK}</strong>
        </p>
      )}
      <p>{why}</p>
      <p className="small">
        <strong>For:</strong> {need}
      </p>
      <p className="small">
        <strong>Reach:</strong> {reach}
      </p>
      <p className="small">
        <strong>Limits:</strong> {limits}
      </p>
      <button
        type="button"
        className={best ? 'main' : undefined}
        aria-label={`${does}: ${name}`}
        onClick={lay}
      >
        {does}
      </button>
    </li>
  );
}
