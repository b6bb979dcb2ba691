/** The rules of the supply, in the order their answers are shown. */
import { cabinetRule } from './cabinet.ts';
import { electricianRule } from './electrician.ts';
import { hotPlugRule } from './hot-plug.ts';
import { chargingRule } from './inrush.ts';
import { socketRule, switchingOnRule } from './mains.ts';
import { fusesRule } from './protection.ts';
import { machineEarthRule, protectiveRule } from './protective.ts';
import { residualRule } from './residual.ts';
import type { SupplyRule } from './rule.ts';
import { storedRule } from './stored.ts';
import { suppliesRule } from './supplies.ts';
import { unfusedRule } from './unfused.ts';
import { voltageDropRule } from './voltage-drop.ts';
import { leastWireRule, wireCurrentRule } from './wire-current.ts';

export const RULES = [
  electricianRule,
  socketRule,
  residualRule,
  switchingOnRule,
  chargingRule,
  hotPlugRule,
  storedRule,
  suppliesRule,
  fusesRule,
  unfusedRule,
  wireCurrentRule,
  leastWireRule,
  voltageDropRule,
  protectiveRule,
  machineEarthRule,
  cabinetRule,
] as readonly SupplyRule<unknown>[];
