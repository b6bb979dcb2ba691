/** Every rule. Add a rule: its file and one line here. Those of power are in engine/circuit/power. */
import type { Rule } from '../check/rule.ts';
import { analogue } from './analogue.ts';
import { separation, shield } from './cables.ts';
import { coil } from './coil.ts';
import { contactRating } from './contact.ts';
import { notConnected, partGone } from './device.ts';
import { earth } from './earth.ts';
import { feed } from './feed.ts';
import { filter } from './filter.ts';
import { outputsJoined, suppliesJoined } from './joined.ts';
import { levels } from './levels.ts';
import { line } from './line.ts';
import { loadOfOutput } from './load-of-output.ts';
import { loop } from './loop.ts';
import { mainsRail } from './mains.ts';
import { motorLead } from './motor.ts';
import { motorStart } from './motor-start.ts';
import { pairs } from './pairs.ts';
import { resistorPower } from './resistor.ts';
import { resolver } from './resolver.ts';
import { reversing } from './reversing.ts';
import { supplySum } from './supply-sum.ts';
import { holding, wireEnds } from './wire-ends.ts';

export const RULES: readonly Rule[] = [
  levels,
  loadOfOutput,
  pairs,
  line,
  analogue,
  resolver,
  feed,
  resistorPower,
  coil,
  contactRating,
  supplySum,
  outputsJoined,
  suppliesJoined,
  mainsRail,
  filter,
  motorLead,
  motorStart,
  reversing,
  earth,
  shield,
  separation,
  wireEnds,
  holding,
  loop,
  partGone,
  notConnected,
];
