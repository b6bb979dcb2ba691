/** All sheets of the handbook. One import and one line a sheet, in alphabetical order. */
import type { Sheet } from '../sheet/index.ts';
import { accelerationTorque } from './acceleration-torque.ts';
import { axialResonance } from './axial-resonance.ts';
import { backDriving } from './back-driving.ts';
import { belt } from './belt.ts';
import { bestRatio } from './best-ratio.ts';
import { buckling } from './buckling.ts';
import { dnLimit } from './dn-limit.ts';
import { gearRatio } from './gear-ratio.ts';
import { inertia } from './inertia.ts';
import { moveSCurve } from './move-s-curve.ts';
import { moveTrapezoidal } from './move-trapezoidal.ts';
import { nutStiffness } from './nut-stiffness.ts';
import { reflectedInertia } from './reflected-inertia.ts';
import { rmsTorque } from './rms-torque.ts';
import { screwLead } from './screw-lead.ts';
import { screwLife } from './screw-life.ts';
import { screwLifePreloaded } from './screw-life-preloaded.ts';
import { screwPreload } from './screw-preload.ts';
import { screwRolling } from './screw-rolling.ts';
import { screwSliding } from './screw-sliding.ts';
import { screwSpeed } from './screw-speed.ts';
import { screwStiffness } from './screw-stiffness.ts';
import { screwTorque } from './screw-torque.ts';
import { slideForces } from './slide-forces.ts';
import { thermalGrowth } from './thermal-growth.ts';
import { whirl } from './whirl.ts';
import { whirlShortcut } from './whirl-shortcut.ts';

export const HANDBOOK: readonly Sheet[] = [
  accelerationTorque,
  axialResonance,
  backDriving,
  belt,
  bestRatio,
  buckling,
  dnLimit,
  gearRatio,
  inertia,
  moveSCurve,
  moveTrapezoidal,
  nutStiffness,
  reflectedInertia,
  rmsTorque,
  screwLead,
  screwLife,
  screwLifePreloaded,
  screwPreload,
  screwRolling,
  screwSliding,
  screwSpeed,
  screwStiffness,
  screwTorque,
  slideForces,
  thermalGrowth,
  whirl,
  whirlShortcut,
];
