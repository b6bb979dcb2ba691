/** What a run showed, sentence by sentence, the gravest first. */
import type { Saying } from '../../../engine/simulate/index.ts';
import { Mark } from '../../parts/verdict.tsx';

const LEVELS = { bad: 'fails', doubtful: 'tight', good: 'fits', note: 'unknown' } as const;
const WORDS = { bad: 'It fails: ', doubtful: 'Beware: ', good: 'Good: ', note: '' } as const;

export function Says({ says }: { says: readonly Saying[] }) {
  return (
    <ul className="sayings">
      {says.map(({ level, sentence }) => (
        <li key={sentence} className={level}>
          {level === 'note' ? <span className="mark" aria-hidden="true" /> : <Mark verdict={LEVELS[level]} />}
          <span>
            <span className="hidden">{WORDS[level]}</span>
            {sentence}
          </span>
        </li>
      ))}
    </ul>
  );
}
