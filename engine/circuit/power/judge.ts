/** The supply judged: every rule over one context. */
import type { Refit } from '../../refit/types.ts';
import type { ReadWiring, WiringFinding } from '../wiring/types.ts';
import { type Size, sizesToBuy } from './buying.ts';
import { type PowerContext, powerContext } from './context.ts';
import type { Drawn } from './given.ts';
import { cabinet } from './rules/cabinet.ts';
import { electrician } from './rules/electrician.ts';
import { charging } from './rules/inrush.ts';
import { socket, switchingOn } from './rules/mains.ts';
import { fuses } from './rules/protection.ts';
import { protectiveConductors } from './rules/protective.ts';
import { residual } from './rules/residual.ts';
import { supplies } from './rules/supplies.ts';
import { unfused } from './rules/unfused.ts';
import { voltageDrop } from './rules/voltage-drop.ts';
import { leastWire, wireCurrent } from './rules/wire-current.ts';
import { finding } from './say.ts';

type SupplyRule = (context: PowerContext) => readonly WiringFinding[];

/** In the order they are shown; those that need no currents are asked even where none can be worked out. */
const RULES: readonly { readonly rule: SupplyRule; readonly needs: 'currents' | 'nothing' }[] = [
  { rule: electrician, needs: 'nothing' },
  { rule: socket, needs: 'currents' },
  { rule: residual, needs: 'nothing' },
  { rule: switchingOn, needs: 'nothing' },
  { rule: charging, needs: 'nothing' },
  { rule: supplies, needs: 'currents' },
  { rule: fuses, needs: 'currents' },
  { rule: unfused, needs: 'nothing' },
  { rule: wireCurrent, needs: 'currents' },
  { rule: leastWire, needs: 'nothing' },
  { rule: voltageDrop, needs: 'currents' },
  { rule: protectiveConductors, needs: 'nothing' },
  { rule: cabinet, needs: 'nothing' },
];

export interface PowerAnswer {
  readonly context: PowerContext;
  readonly findings: readonly WiringFinding[];
  readonly sizes: readonly Size[];
}

/** Nothing to judge while nothing is drawn; what to buy for the drives' bus needs no drawing. */
export function judgeSupply(refit: Refit, wiring: ReadWiring, drawn: Drawn = {}): PowerAnswer {
  const context = powerContext(refit, wiring, drawn);
  if (wiring.devices.size === 0) return { context, findings: [], sizes: sizesToBuy(context) };
  const { trouble } = context.flow;
  const findings = RULES.flatMap(({ rule, needs }) => (trouble && needs === 'currents' ? [] : rule(context)));
  if (trouble)
    findings.unshift(
      trouble.kind === 'source-loop'
        ? finding('short', trouble.elements, 'Short circuit', 'fails', trouble.sentence, 'Kirchhoff’s laws', {
            remedy: 'Find the wire that is on the wrong terminal; currents are worked out once it is off.',
          })
        : finding(
            'currents',
            trouble.elements,
            'Currents of the wiring',
            'unknown',
            `The currents could not be worked out: ${trouble.sentence}`,
            'Kirchhoff’s laws',
          ),
    );
  return { context, findings, sizes: sizesToBuy(context) };
}
