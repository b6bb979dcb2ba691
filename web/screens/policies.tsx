/** Habits: every factor that is only common practice, in one list, each to be changed for this refit. */
import { POLICIES } from '../../engine/checks/policies.ts';
import type { Session, View } from '../state/session.ts';
import { Habit } from './why-panel.tsx';

export function Policies({ session, view }: { session: Session; view: View }) {
  const text = (value: string, unit: string): string =>
    unit === '1' || /[^\d\s.,]/.test(value) ? value : `${value} ${unit}`;
  return (
    <div>
      <h1>Which factors are only habit?</h1>
      <p>
        No law of nature stands behind these numbers, only practice. Change one and every finding that uses it
        follows.
      </p>
      <div className="sheet">
        {POLICIES.map((policy) => (
          <Habit
            key={policy.id}
            session={session}
            view={view}
            id={policy.id}
            name={policy.name}
            usual={text(policy.usual, policy.unit)}
            text={text(view.refit.policies[policy.id] ?? policy.usual, policy.unit)}
            why={policy.why}
            source={policy.source}
          />
        ))}
      </div>
    </div>
  );
}
