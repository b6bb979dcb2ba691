/** A thread: what limits the speed, how it goes in, where the starts lie, and the pass in time. */
import type { Work } from '../../../engine/refit/types.ts';
import type { ThreadDetail } from '../../../engine/work/index.ts';
import { usePerson } from '../../state/person.ts';
import { Passes } from '../threads/passes.tsx';
import { InStep } from './in-step.tsx';
import { length, rpm, value } from './say.ts';
import { SpeedBars } from './speed-bars.tsx';
import type { WorkView } from './use-work.ts';

/** More passes than this make a table too long to stand open. */
const FEW = 15;

interface Props {
  readonly work: Work;
  readonly detail: ThreadDetail;
  readonly state: WorkView;
}

export function ThreadDetails({ work, detail, state }: Props) {
  const { system } = usePerson();
  const { thread, plan, limits, speed, side } = detail;
  return (
    <div className="stack">
      <div>
        <h3>How fast the spindle may turn</h3>
        <SpeedBars limits={limits} speed={speed} />
      </div>
      {plan && (
        <div>
          <h3>How it goes in</h3>
          <p className="caution">
            <strong>Take care.</strong> {detail.caution}
          </p>
          <p>
            {plan.passes.length} passes and {plan.springs} without infeed at {rpm(plan.speed)}, about{' '}
            {value(plan.time, 's')}. Begin {length(plan.runIn)} before the thread and leave{' '}
            {length(plan.runOut)} behind it. Keep the spindle speed from the first pass to the last
            {detail.trail === null ? '.' : `: the slide trails by ${length(detail.trail)}.`}
          </p>
          {plan.starts.length > 1 && (
            <table>
              <thead>
                <tr>
                  <th scope="col">start</th>
                  <th scope="col" className="number">
                    angle
                  </th>
                  <th scope="col" className="number">
                    or shifted by
                  </th>
                </tr>
              </thead>
              <tbody>
                {plan.starts.map(({ number, angle, shift }) => (
                  <tr key={number}>
                    <th scope="row">{number}</th>
                    <td className="number">{((angle * 180) / Math.PI).toFixed(0)}°</td>
                    <td className="number">{length(shift)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
          <details open={plan.passes.length <= FEW}>
            <summary>Pass by pass</summary>
            <Passes thread={thread} plan={plan} side={side} system={system} />
          </details>
        </div>
      )}
      <InStep id={work.id} kind="thread" state={state} />
    </div>
  );
}
