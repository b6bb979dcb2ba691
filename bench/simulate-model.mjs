/** The axis and the move of the timings: two masses, dry friction that sticks, a sampled cascade, counts. */
const none = Number.POSITIVE_INFINITY;
export const r = 0.005 / (2 * Math.PI);

export const MODEL = {
  motor: {
    kind: 'servo',
    resistance: 1.2,
    inductance: 3e-3,
    constant: 0.35,
    inertia: 8e-4,
    coulomb: 0.05,
    viscous: 1e-3,
    brushDrop: 0,
  },
  transmission: {
    lead: 0.005,
    ratio: 1,
    screwInertia: 4e-4,
    stiffness: 6e7,
    damping: 5000,
    backlash: 0,
    couplingShare: 0,
  },
  slide: {
    mass: 120,
    tilt: 0,
    balance: 0,
    staticFriction: 260,
    coulomb: 200,
    viscous: 500,
    fallSpeed: 0.002,
    smoothing: 0,
  },
  feedback: { on: 'motor', countsPerTurn: 4000, countLength: 0 },
  drive: {
    currentLimit: 20,
    duty: 0.95,
    overvoltage: none,
    undervoltage: 0,
    followingLimit: none,
    whenOff: 'coast',
    pulse: 0,
  },
  control: {
    kind: 'cascade',
    positionGain: 40,
    speedGain: 0.7,
    speedIntegral: 35,
    speedForward: 1,
    accelerationForward: 0,
    current: 'pi',
    currentGain: 9.5,
    currentIntegral: 3800,
    sample: 5e-5,
    speedEvery: 4,
    positionEvery: 4,
    delay: 1,
    speedFrom: 'encoder',
  },
  brake: null,
  supply: {
    kind: 'constant',
    voltage: 75,
    mains: 1,
    frequency: 50,
    sourceResistance: 0,
    diodeDrop: 0,
    capacitance: 0.022,
    bleeder: none,
    dumpOn: none,
    dumpOff: none,
    dumpResistance: none,
    otherLoad: 0,
  },
};

export const MOVE = { kind: 'rapid', distance: 0.05, speed: 0.12, acceleration: 2, jerk: 0 };

/** The same as plain numbers in motor radians, in the order in which the C program reads them. */
export function numbers(model, move) {
  const { motor, transmission: t, slide: s, control: c, feedback, drive, supply } = model;
  const jerkTime = move.jerk > 0 ? move.acceleration / move.jerk : 0;
  const steady = move.speed / move.acceleration - jerkTime;
  const cruise = (move.distance - move.speed * (2 * jerkTime + steady)) / move.speed;
  return {
    R: motor.resistance,
    L: motor.inductance,
    K: motor.constant,
    J1: motor.inertia + t.screwInertia,
    J2: s.mass * r * r,
    k: t.stiffness * r * r,
    c: t.damping * r * r,
    gap: t.backlash / 2 / r,
    T1: motor.coulomb,
    b1: motor.viscous,
    Ts: s.staticFriction * r,
    Tc: s.coulomb * r,
    b2: s.viscous * r * r,
    fall: s.fallSpeed / r,
    r,
    Kp: c.positionGain,
    Kvp: c.speedGain,
    Kvi: c.speedIntegral,
    kff: c.speedForward,
    Kcp: c.currentGain,
    Kci: c.currentIntegral,
    limit: drive.currentLimit,
    volt: drive.duty * supply.voltage,
    T: c.sample,
    count: feedback.countsPerTurn > 0 ? (2 * Math.PI) / feedback.countsPerTurn : 0,
    every: c.speedEvery,
    positionEvery: c.positionEvery,
    delay: c.delay,
    speed: move.speed / r,
    acceleration: move.acceleration / r,
    jerkTime,
    steady,
    cruise,
    tacho: c.speedFrom === 'tacho' ? 1 : 0,
  };
}
