/** All sheets of the handbook. One import and one line a sheet, in alphabetical order. */
import type { Sheet } from '../sheet/index.ts';
import { accelerationTorque } from './acceleration-torque.ts';
import { analogueCommand } from './analogue-command.ts';
import { axialResonance } from './axial-resonance.ts';
import { axisCycle } from './axis-cycle.ts';
import { axisTorque } from './axis-torque.ts';
import { backDriving } from './back-driving.ts';
import { backEfficiency } from './back-efficiency.ts';
import { bearingSpeed } from './bearing-speed.ts';
import { belt } from './belt.ts';
import { benchBackEmf } from './bench-back-emf.ts';
import { benchBacklash } from './bench-backlash.ts';
import { benchCoastDown } from './bench-coast-down.ts';
import { benchCoil } from './bench-coil.ts';
import { benchCounting } from './bench-counting.ts';
import { benchInductance } from './bench-inductance.ts';
import { benchInsulation } from './bench-insulation.ts';
import { benchLever } from './bench-lever.ts';
import { benchMagnet } from './bench-magnet.ts';
import { benchMains } from './bench-mains.ts';
import { benchNoLoad } from './bench-no-load.ts';
import { benchPull } from './bench-pull.ts';
import { benchResistance } from './bench-resistance.ts';
import { benchResolver } from './bench-resolver.ts';
import { benchRunOut } from './bench-run-out.ts';
import { benchSpindleStop } from './bench-spindle-stop.ts';
import { benchStiffness } from './bench-stiffness.ts';
import { benchTacho } from './bench-tacho.ts';
import { benchTravel } from './bench-travel.ts';
import { benchWeight } from './bench-weight.ts';
import { bestRange } from './best-range.ts';
import { bestRatio } from './best-ratio.ts';
import { brakingEnergy } from './braking-energy.ts';
import { brakingResistor } from './braking-resistor.ts';
import { breaker } from './breaker.ts';
import { brushlessConstants } from './brushless-constants.ts';
import { buckling } from './buckling.ts';
import { busBraking } from './bus-braking.ts';
import { busCurrent } from './bus-current.ts';
import { busExtremes } from './bus-extremes.ts';
import { cabinetHeat } from './cabinet-heat.ts';
import { chuckGrip } from './chuck-grip.ts';
import { coilSuppression } from './coil-suppression.ts';
import { conductorCapacity } from './conductor-capacity.ts';
import { conductorDrop } from './conductor-drop.ts';
import { conductorProtective } from './conductor-protective.ts';
import { controlTransformer } from './control-transformer.ts';
import { copperHeating } from './copper-heating.ts';
import { countsRounding } from './counts-rounding.ts';
import { cutBoring } from './cut-boring.ts';
import { cutDrilling } from './cut-drilling.ts';
import { cutMilling } from './cut-milling.ts';
import { cutParting } from './cut-parting.ts';
import { cutThreadMilling } from './cut-thread-milling.ts';
import { cutThreading } from './cut-threading.ts';
import { cutTurning } from './cut-turning.ts';
import { dcEquivalent } from './dc-equivalent.ts';
import { dcMotor } from './dc-motor.ts';
import { demagnetising } from './demagnetising.ts';
import { discharge } from './discharge.ts';
import { dnLimit } from './dn-limit.ts';
import { driveInput } from './drive-input.ts';
import { driveMatch } from './drive-match.ts';
import { dutyCycle } from './duty-cycle.ts';
import { encoder } from './encoder.ts';
import { gearRatio } from './gear-ratio.ts';
import { gearTurns } from './gear-turns.ts';
import { gripForCut } from './grip-for-cut.ts';
import { guardDistance } from './guard-distance.ts';
import { indexCount } from './index-count.ts';
import { inductionMotor } from './induction-motor.ts';
import { inertia } from './inertia.ts';
import { inrush } from './inrush.ts';
import { leadAgreement } from './lead-agreement.ts';
import { lineDriver } from './line-driver.ts';
import { logicLevels } from './logic-levels.ts';
import { mainsTap } from './mains-tap.ts';
import { motorHeating } from './motor-heating.ts';
import { motorHeatingTwoBody } from './motor-heating-two-body.ts';
import { motorSpeeds } from './motor-speeds.ts';
import { motorTemperature } from './motor-temperature.ts';
import { motorTimeConstants } from './motor-time-constants.ts';
import { moveSCurve } from './move-s-curve.ts';
import { moveTrapezoidal } from './move-trapezoidal.ts';
import { movingMass } from './moving-mass.ts';
import { nutStiffness } from './nut-stiffness.ts';
import { optoInput } from './opto-input.ts';
import { pullUp } from './pull-up.ts';
import { pulseTravel } from './pulse-travel.ts';
import { quantisation } from './quantisation.ts';
import { rangeSteps } from './range-steps.ts';
import { reflectedInertia } from './reflected-inertia.ts';
import { regeneration } from './regeneration.ts';
import { regulatedSupply } from './regulated-supply.ts';
import { resolution } from './resolution.ts';
import { resolverConverter } from './resolver-converter.ts';
import { rimSpeed } from './rim-speed.ts';
import { ripple } from './ripple.ts';
import { rippleSourceResistance } from './ripple-source-resistance.ts';
import { rmsCurrent } from './rms-current.ts';
import { rmsTorque } from './rms-torque.ts';
import { screwDrag } from './screw-drag.ts';
import { screwLead } from './screw-lead.ts';
import { screwLife } from './screw-life.ts';
import { screwLifePreloaded } from './screw-life-preloaded.ts';
import { screwPreload } from './screw-preload.ts';
import { screwRolling } from './screw-rolling.ts';
import { screwSliding } from './screw-sliding.ts';
import { screwSpeed } from './screw-speed.ts';
import { screwStiffness } from './screw-stiffness.ts';
import { screwTorque } from './screw-torque.ts';
import { shareOf } from './share-of.ts';
import { slideForces } from './slide-forces.ts';
import { spindleAtSpeed } from './spindle-at-speed.ts';
import { spindleBelt } from './spindle-belt.ts';
import { spindleCounts } from './spindle-counts.ts';
import { spindleCurve } from './spindle-curve.ts';
import { spindleInertia } from './spindle-inertia.ts';
import { spindleLimits } from './spindle-limits.ts';
import { spindleRunUp } from './spindle-run-up.ts';
import { spindleStop } from './spindle-stop.ts';
import { standstill } from './standstill.ts';
import { starDelta } from './star-delta.ts';
import { stepRate } from './step-rate.ts';
import { stepTiming } from './step-timing.ts';
import { stepper } from './stepper.ts';
import { stepperCurve } from './stepper-curve.ts';
import { stepperDraw } from './stepper-draw.ts';
import { stepperTurn } from './stepper-turn.ts';
import { tapDepth } from './tap-depth.ts';
import { tapStop } from './tap-stop.ts';
import { tapTorque } from './tap-torque.ts';
import { tapTorqueSimple } from './tap-torque-simple.ts';
import { thermalGrowth } from './thermal-growth.ts';
import { threadForm55 } from './thread-form-55.ts';
import { threadForm60 } from './thread-form-60.ts';
import { threadFormTrapezoidal } from './thread-form-trapezoidal.ts';
import { threadHelix } from './thread-helix.ts';
import { threadNpt } from './thread-npt.ts';
import { threadPass } from './thread-pass.ts';
import { threadPassVariant } from './thread-pass-variant.ts';
import { threadRunIn } from './thread-run-in.ts';
import { threadSpeed } from './thread-speed.ts';
import { threadStarts } from './thread-starts.ts';
import { threadTapHole } from './thread-tap-hole.ts';
import { threadTaper } from './thread-taper.ts';
import { threadToleranceMetric } from './thread-tolerance-metric.ts';
import { threadToleranceUnified } from './thread-tolerance-unified.ts';
import { threadToleranceWhitworth } from './thread-tolerance-whitworth.ts';
import { threadWires } from './thread-wires.ts';
import { torqueCurrent } from './torque-current.ts';
import { transformerRating } from './transformer-rating.ts';
import { travelPerCount } from './travel-per-count.ts';
import { usualFriction } from './usual-friction.ts';
import { voltsBand } from './volts-band.ts';
import { whirl } from './whirl.ts';
import { whirlShortcut } from './whirl-shortcut.ts';

export const HANDBOOK: readonly Sheet[] = [
  accelerationTorque,
  analogueCommand,
  axialResonance,
  axisCycle,
  axisTorque,
  backDriving,
  backEfficiency,
  bearingSpeed,
  belt,
  benchBackEmf,
  benchBacklash,
  benchCoastDown,
  benchCoil,
  benchCounting,
  benchInductance,
  benchInsulation,
  benchLever,
  benchMagnet,
  benchMains,
  benchNoLoad,
  benchPull,
  benchResistance,
  benchResolver,
  benchRunOut,
  benchSpindleStop,
  benchStiffness,
  benchTacho,
  benchTravel,
  benchWeight,
  bestRange,
  bestRatio,
  brakingEnergy,
  brakingResistor,
  breaker,
  brushlessConstants,
  buckling,
  busBraking,
  busCurrent,
  busExtremes,
  cabinetHeat,
  chuckGrip,
  coilSuppression,
  conductorCapacity,
  conductorDrop,
  conductorProtective,
  controlTransformer,
  copperHeating,
  countsRounding,
  cutBoring,
  cutDrilling,
  cutMilling,
  cutParting,
  cutThreadMilling,
  cutThreading,
  cutTurning,
  dcEquivalent,
  dcMotor,
  demagnetising,
  discharge,
  dnLimit,
  driveInput,
  driveMatch,
  dutyCycle,
  encoder,
  gearRatio,
  gearTurns,
  gripForCut,
  guardDistance,
  indexCount,
  inductionMotor,
  inertia,
  inrush,
  leadAgreement,
  lineDriver,
  logicLevels,
  mainsTap,
  motorHeating,
  motorHeatingTwoBody,
  motorSpeeds,
  motorTemperature,
  motorTimeConstants,
  moveSCurve,
  moveTrapezoidal,
  movingMass,
  nutStiffness,
  optoInput,
  pullUp,
  pulseTravel,
  quantisation,
  rangeSteps,
  reflectedInertia,
  regeneration,
  regulatedSupply,
  resolution,
  resolverConverter,
  rimSpeed,
  ripple,
  rippleSourceResistance,
  rmsCurrent,
  rmsTorque,
  screwDrag,
  screwLead,
  screwLife,
  screwLifePreloaded,
  screwPreload,
  screwRolling,
  screwSliding,
  screwSpeed,
  screwStiffness,
  screwTorque,
  shareOf,
  slideForces,
  spindleAtSpeed,
  spindleBelt,
  spindleCounts,
  spindleCurve,
  spindleInertia,
  spindleLimits,
  spindleRunUp,
  spindleStop,
  standstill,
  starDelta,
  stepRate,
  stepTiming,
  stepper,
  stepperCurve,
  stepperDraw,
  stepperTurn,
  tapDepth,
  tapStop,
  tapTorque,
  tapTorqueSimple,
  thermalGrowth,
  threadForm55,
  threadForm60,
  threadFormTrapezoidal,
  threadHelix,
  threadNpt,
  threadPass,
  threadPassVariant,
  threadRunIn,
  threadSpeed,
  threadStarts,
  threadTapHole,
  threadTaper,
  threadToleranceMetric,
  threadToleranceUnified,
  threadToleranceWhitworth,
  threadWires,
  torqueCurrent,
  transformerRating,
  travelPerCount,
  usualFriction,
  voltsBand,
  whirl,
  whirlShortcut,
];
