/** The supply judged: every rule over one context. */
import type { Refit } from '../../refit/types.ts';
import type { ReadWiring, WiringFinding } from '../wiring/types.ts';
import { type Size, sizesToBuy } from './buying.ts';
import { type PowerContext, powerContext } from './context.ts';
import type { Drawn } from './given.ts';
import { cabinet } from './rules/cabinet.ts';
import { electrician } from './rules/electrician.ts';
import { residual, socket, switchingOn } from './rules/mains.ts';
import { fuses, unfused } from './rules/protection.ts';
import { protectiveConductors } from './rules/protective.ts';
import { supplies } from './rules/supplies.ts';
import { voltageDrop } from './rules/voltage-drop.ts';
import { leastWire, wireCurrent } from './rules/wire-current.ts';
import { finding } from './say.ts';

/** In the order they are shown. Add a rule: its file and one line here. */
const RULES: readonly ((context: PowerContext) => readonly WiringFinding[])[] = [
  electrician,
  socket,
  residual,
  switchingOn,
  supplies,
  fuses,
  unfused,
  wireCurrent,
  leastWire,
  voltageDrop,
  protectiveConductors,
  cabinet,
];

export interface PowerAnswer {
  readonly context: PowerContext;
  readonly findings: readonly WiringFinding[];
  readonly sizes: readonly Size[];
}

/** Nothing to judge while nothing is drawn. */
export function judgeSupply(refit: Refit, wiring: ReadWiring, drawn: Drawn = {}): PowerAnswer {
  const context = powerContext(refit, wiring, drawn);
  if (wiring.devices.size === 0) return { context, findings: [], sizes: [] };
  const { trouble } = context.flow;
  const findings = RULES.flatMap((rule) => rule(context));
  if (trouble)
    findings.unshift(
      finding(
        'currents',
        trouble.elements.map(plain),
        'Currents of the wiring',
        'unknown',
        `The currents could not be worked out: ${plain(trouble.sentence)}`,
        'Kirchhoff’s laws',
      ),
    );
  return { context, findings, sizes: sizesToBuy(context) };
}

/** Names of elements without what only the solver needs. */
const plain = (text: string): string => text.replace(/\b(source|wire|pair|load|output|join) /g, '');
