/** How a proposal connects things where nobody has said it, why, and where that is said otherwise. */
import { useState } from 'react';
import { Link } from 'wouter';
import { type Assumed, stateAll } from '../../../engine/circuit/whole/index.ts';
import type { AnswerPlace } from '../../../engine/circuit/wiring/index.ts';
import { andList } from '../../../engine/quantity/words.ts';
import type { Wiring } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';
import { recordAll } from './record-all.ts';

interface Props {
  readonly assumed: readonly Assumed[];
  readonly session: Session;
  /** The proposed wiring: what is said of a device of it is recorded with the device. */
  readonly wiring: Wiring;
}

export function AssumedConnections({ assumed, session, wiring }: Props) {
  if (assumed.length === 0) return null;
  return (
    <>
      <h3>Taken for granted of how it is connected</h3>
      <ul className="small" data-assumed>
        {assumed.map((each) => (
          <li key={each.says}>
            {each.says} <Otherwise {...{ session, wiring }} otherwise={each.otherwise} />
          </li>
        ))}
      </ul>
    </>
  );
}

interface OtherwiseProps extends Omit<Props, 'assumed'> {
  readonly otherwise: Assumed['otherwise'];
}

function Otherwise({ otherwise: { of, places, value }, session, wiring }: OtherwiseProps) {
  const [wrong, setWrong] = useState<string>();
  const home = `/refit/${session.id}`;
  if (of === 'part') return <Link href={`${home}/survey`}>Say what it is in the survey</Link>;
  if (of === 'stop') return <Link href={`${home}/stop`}>Draw the stop circuit</Link>;
  const answers = places.map((place): readonly [AnswerPlace, string] => {
    const dot = place.lastIndexOf('.');
    return [{ of: 'device', id: place.slice(0, dot), setting: place.slice(dot + 1) }, value];
  });
  return (
    <>
      <button
        type="button"
        className="plain"
        onClick={() => {
          void recordAll(session, (now) => stateAll(now, answers, wiring)).then(setWrong);
        }}
      >
        It is otherwise: {value} for {andList(answers.map(([place]) => ('id' in place ? place.id : '')))}
      </button>
      {wrong !== undefined && (
        <span className="bad" role="alert">
          {' '}
          {wrong}
        </span>
      )}
    </>
  );
}
