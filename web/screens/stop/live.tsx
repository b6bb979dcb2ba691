/** The machine under the hand: press, open, release, switch off and on, and see what is held and what stops. */

import { type Act, isKind, KINDS, type Model, standingOf } from '../../../engine/circuit/stop/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { StopCircuit } from '../../../engine/refit/types.ts';
import { Chains } from './chains.tsx';
import type { Machine } from './use-machine.ts';

interface Props {
  readonly model: Model;
  readonly circuit: StopCircuit;
  readonly machine: Machine;
}

export function Live({ model, circuit, machine }: Props) {
  const { state, simulation, fault } = machine;
  return (
    <section className="stack" aria-labelledby="stop-live">
      <h2 id="stop-live">Try it</h2>
      {fault && (
        <div className="caution" role="status">
          <strong>Shown with a fault:</strong> {fault.says}.{' '}
          <button type="button" onClick={machine.mend}>
            Take the fault out
          </button>
        </div>
      )}
      <Motions model={model} machine={machine} circuit={circuit} />
      <div className="columns two">
        <Hands circuit={circuit} machine={machine} />
        <div>
          <h3>What happened, newest first</h3>
          <ol className="stop-log small" aria-live="polite">
            {machine.happened.length === 0 && <li>Nothing yet: press a button.</li>}
            {machine.happened.map(({ n, act, says }) => (
              <li key={n}>
                <strong>{act}:</strong> {says[0]}
                {says.slice(1).map((line) => (
                  <div key={line}>{line}</div>
                ))}
              </li>
            ))}
          </ol>
        </div>
      </div>
      <Chains model={model} circuit={circuit} simulation={simulation} state={state} marked={fault?.element} />
    </section>
  );
}

function Motions({ model, machine: { state }, circuit }: Props) {
  return (
    <ul className="stop-motions">
      {model.motions.map(({ id, kind, brake, vertical }, at) => {
        const { torque, driven, open, holds, falls } = standingOf(model, state, at);
        const alone = vertical && kind === 'axis' && holds && !driven && open;
        return (
          <li key={id} className={driven ? 'sheet driven' : falls ? 'sheet falls' : 'sheet'} data-motion={id}>
            <strong>{circuit.motions[id]?.name ?? id}</strong>
            <br />
            {falls
              ? 'nothing holds it: it can drop; prop it before anybody reaches under it'
              : driven
                ? 'is driven'
                : torque
                  ? 'told to stop, its power stays'
                  : 'stops: no power'}
            {alone && '; only its drive holds it: prop it before anybody reaches under it'}
            {brake >= 0 && `; brake ${open ? 'open' : 'closed'}`}
          </li>
        );
      })}
    </ul>
  );
}

function Hands({ circuit, machine }: { circuit: StopCircuit; machine: Machine }) {
  const name = ({ mover }: Act): string => {
    if (mover < 0) return 'Main switch';
    const { element } = machine.simulation.network.model.movers[mover]!;
    const each = circuit.elements[element];
    return each?.name || (each && isKind(each.kind) ? KINDS[each.kind].name : element);
  };
  const groups = new Map<number, Act[]>();
  for (const each of machine.acts) groups.set(each.mover, [...(groups.get(each.mover) ?? []), each]);
  return (
    <div className="stop-hands">
      <button type="button" className="main" onClick={machine.start}>
        Power on and start
      </button>
      {[...groups].map(([mover, acts]) => (
        <fieldset key={mover} className="row">
          <legend className="small soft">{name(acts[0]!)}</legend>
          {acts.map((each) => (
            <button
              key={each.says}
              type="button"
              // Not disabled: the focus of a keyboard stays where it was pressed.
              aria-disabled={!machine.can(each)}
              onClick={() => machine.can(each) && machine.do(each)}
            >
              {capital(each.says)}
            </button>
          ))}
        </fieldset>
      ))}
    </div>
  );
}
