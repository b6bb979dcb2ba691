/** An invented axis with everything in it: sampled cascade, counts, yielding screw, friction that sticks. */
import { AX1, changed } from './axis.fixture.ts';

export const SHOP = changed(AX1, {
  motor: { coulomb: 0.05 },
  transmission: { stiffness: 6e7, damping: 5000 },
  slide: { staticFriction: 260, coulomb: 200, viscous: 500, fallSpeed: 0.002 },
  feedback: { countsPerTurn: 4000 },
  drive: { currentLimit: 20, duty: 0.95 },
  control: {
    speedGain: 0.7,
    speedIntegral: 35,
    speedForward: 1,
    currentGain: 9.5,
    currentIntegral: 3800,
    sample: 5e-5,
    speedEvery: 4,
    positionEvery: 4,
    delay: 1,
  },
  supply: { voltage: 75 },
});

/** The same from a transformer and a capacitor. */
export const SHOP_SUPPLY = changed(SHOP, {
  supply: { kind: 'transformer', voltage: 53, sourceResistance: 0.25, diodeDrop: 1.1, capacitance: 0.022 },
});
