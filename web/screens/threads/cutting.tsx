/** How the machine can cut a thread: passes, and the chart for the wall. */
import { formatQuantity } from '../../../engine/quantity/index.ts';
import {
  type Machine,
  PLAN_CAUTION,
  planThread,
  type Side,
  type Thread,
} from '../../../engine/threads/index.ts';
import { usePerson } from '../../state/person.ts';
import type { Field, Fields } from './fields.ts';
import { Passes } from './passes.tsx';
import { mm, rpm } from './say.ts';
import { WallChart } from './wall-chart.tsx';

interface CuttingProps {
  readonly thread: Thread;
  readonly side: Side;
  readonly infeed: 'straight' | 'flank';
  readonly fields: Fields;
}

export function Cutting({ thread, side, infeed, fields }: CuttingProps) {
  const { system } = usePerson();
  const value = (key: Field): number | undefined => {
    const field = fields[key];
    return field.ok ? field.value : undefined;
  };
  const [rapid, acceleration, length] = [value('rapid'), value('accel'), value('length')];
  const wrong = Object.values(fields).some((field) => !field.ok);
  if (wrong || rapid === undefined || acceleration === undefined || length === undefined)
    return (
      <p role="status">A plan needs speed and acceleration of the slide, and the length of the thread.</p>
    );
  const [gain, spindle, room] = [value('gain'), value('spindle'), value('room')];
  const machine: Machine = {
    rapid,
    acceleration,
    ...(gain === undefined ? {} : { gain }),
    ...(spindle === undefined ? {} : { spindle }),
  };
  const plan = planThread(thread, machine, { side, length, infeed, ...(room === undefined ? {} : { room }) });
  if (plan.speed < 0.1)
    return (
      <p className="bad">
        No spindle speed leaves the slide enough room before the thread; begin further away.
      </p>
    );
  return (
    <div className="columns two" style={{ marginTop: '1rem' }}>
      <div>
        <h3>Passes</h3>
        <p className="caution">
          <strong>Take care.</strong> {PLAN_CAUTION}
        </p>
        <p>
          At most <strong>{rpm(plan.speed)}</strong>: {plan.limits[0]!.name} allows no more. Begin at least{' '}
          {mm(plan.runIn, 1)} mm before the thread and leave {mm(plan.runOut, 1)} mm behind it. Keep the
          spindle speed from the first pass to the last: the slide trails by {mm(plan.trail, 2)} mm.
        </p>
        {thread.starts > 1 && (
          <p>
            Starts:{' '}
            {plan.starts
              .map(
                ({ number, angle, shift }) =>
                  `${number} at ${((angle * 180) / Math.PI).toFixed(0)}° or ${mm(shift, 2)} mm further`,
              )
              .join('; ')}
            .
          </p>
        )}
        <p>
          {plan.passes.length} passes and {plan.springs} without infeed, about{' '}
          {formatQuantity(plan.time, 's', { digits: 2 })}.
        </p>
        {plan.assumed.map((sentence) => (
          <p key={sentence} className="small soft">
            {sentence}
          </p>
        ))}
        <Passes thread={thread} plan={plan} side={side} system={system} />
      </div>
      <div>
        <div className="row spread">
          <h3>For the wall</h3>
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </div>
        <WallChart machine={machine} room={room} thread={thread} />
      </div>
    </div>
  );
}
