/** What can go wrong with what moves: buttons, coils, brakes, inputs. */
import type { FaultGroup, NamedFault } from './faults.ts';
import type { Model } from './model.ts';
import type { Fault } from './network.ts';

const EXCLUDED =
  'A direct-opening device that is firmly fixed may be trusted mechanically (ISO 13849-2, table D.8; from memory). No wiring catches this fault: check it by hand.';

export function* moverFaults({ movers, controls, drives, motions }: Model): Generator<NamedFault> {
  const enables = new Set(controls.map(({ enable }) => enable));
  const brakes = new Set(motions.map(({ brake }) => brake));
  const inputs = new Set([
    ...drives.flatMap(({ enable, sto, powers }) => [enable, ...powers, ...sto]),
    ...controls.map(({ stop }) => stop),
  ]);
  const powers = new Set(drives.flatMap((each) => each.powers));
  for (const [mover, { id, element, kind, does, dropOut }] of movers.entries()) {
    const stuck = (at: 0 | 1): readonly Fault[] => [{ kind: 'stuck', mover, at }];
    const named = (words: string, group: FaultGroup, says: string, at: 0 | 1): NamedFault => ({
      id: `${id} ${words}`,
      group,
      element,
      says,
      faults: stuck(at),
    });
    if (does) {
      if (does.role === 'program') continue;
      if (does.role === 'start' || does.role === 'stop' || does.role === 'other') {
        if (does.springsBack) {
          yield named('stuck pressed', 'mechanical', `Button ${id} stays pressed`, 1);
          yield named('cannot be pressed', 'mechanical', `Pressing ${id} does nothing`, 0);
        } else {
          yield named('stays on', 'mechanical', `Switch ${id} stays on, or was left on`, 1);
          yield named('cannot be turned on', 'mechanical', `Turning ${id} on does nothing`, 0);
        }
        continue;
      }
      const dead: NamedFault = named(
        'does not act',
        'mechanical',
        `${sayDevice(does.role)} ${id} does nothing: its contacts are not moved`,
        does.normal,
      );
      yield does.direct ? { ...dead, mayExclude: EXCLUDED } : dead;
      if (does.role === 'emergency')
        yield {
          id: `${id} does not latch`,
          group: 'mechanical',
          element,
          says: `${id} does not stay in when pressed`,
          faults: [{ kind: 'no-latch', mover }],
        };
      continue;
    }
    if (brakes.has(mover)) {
      yield named('does not close', 'brake', `Brake ${id} does not close`, 1);
      yield named('does not open', 'brake', `Brake ${id} does not open`, 0);
    } else if (kind === 'coil') {
      yield named('coil dead', 'coil', `The coil of ${id} is dead`, 0);
      yield named('stays pulled in', 'coil', `${id} stays pulled in without current`, 1);
      if (dropOut >= 0.15)
        yield {
          id: `${id} no delay`,
          group: 'coil',
          element,
          says: `${id} lets go at once instead of late`,
          faults: [{ kind: 'no-delay', mover }],
        };
    } else if (enables.has(mover)) {
      yield named('stuck on', 'input', `The output of ${element} that enables the drives stays on`, 1);
      yield named('stuck off', 'input', `The output of ${element} that enables the drives stays off`, 0);
    } else if (inputs.has(mover) && !powers.has(mover)) {
      yield named('stuck on', 'input', `Input ${id} stays on whatever its wire says`, 1);
      yield named('stuck off', 'input', `Input ${id} stays off`, 0);
    } else if (kind === 'logic' && dropOut >= 0.15) {
      yield {
        id: `${id} no delay`,
        group: 'unit',
        element,
        says: `${id} lets go at once instead of late`,
        faults: [{ kind: 'no-delay', mover }],
      };
    }
  }
}

const sayDevice = (role: string): string =>
  role === 'emergency'
    ? 'Emergency stop'
    : role === 'door'
      ? 'Door switch'
      : role === 'limit'
        ? 'Limit switch'
        : 'Switch';
