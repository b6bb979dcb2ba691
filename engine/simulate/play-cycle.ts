/**
 * The swing that play keeps up in a loop, estimated by what play and dry friction do to a sine (their describing functions).
 * Play in a yielding screw is a spring with a dead zone: to a swing it looks like a softer spring, the softer the smaller the
 * swing. Dry friction looks like friction that grows with speed, the stronger the smaller the swing. Where the loop with
 * these just keeps a swing up, it hunts. Derived; the two functions are those of A. Gelb, W. E. Vander Velde,
 * Multiple-Input Describing Functions and Nonlinear System Design (1968; from memory).
 */
import { add, type Complex, complex, over, size, times } from './complex.ts';
import { openLoop } from './margins.ts';
import { type AxisModel, inertias, travelPerRadian } from './model.ts';

/** A swing to and fro that does not die away. */
export interface Swing {
  /** m of the slide to either side. */
  readonly amplitude: number;
  /** Swings a second. */
  readonly frequency: number;
}

/** Share of a spring's stiffness left to a swing of which the dead zone, to either side, is this share (0 to 1). */
export function springLeft(share: number): number {
  if (!(share < 1)) return 0;
  return 1 - (2 / Math.PI) * (Math.asin(share) + share * Math.sqrt(1 - share * share));
}

/** Shares looked through, frequencies (rad/s), and turns in which friction and swing find each other. */
const SHARES = 60;
const FREQUENCIES = 160;
const LOWEST = 2;
const TURNS = 4;
const HALVINGS = 24;

/** The loop's gain where a swing comes back turned by just half a turn, and how far the slide goes in that swing (m). */
interface Answer {
  readonly gain: number;
  readonly w: number;
  readonly slide: number;
}

/** Null where no swing keeps itself up, and where the play lies outside the loop: the loop looks at motor or screw. */
export function playCycle(model: AxisModel): Swing | null {
  const { transmission, feedback, control } = model;
  if (!(transmission.backlash > 0) || feedback.on !== 'slide' || control.kind === 'open') return null;
  let before = 0;
  // From the largest swing down: the first that keeps itself up is the one that larger swings shrink to.
  for (let step = 1; step < SHARES; step++) {
    const share = step / SHARES;
    const answer = at(model, share);
    if (answer === null || !(answer.gain >= 1)) {
      before = share;
      continue;
    }
    if (step === 1) return null;
    let low = before;
    let high = share;
    let found = answer;
    for (let turn = 0; turn < HALVINGS; turn++) {
      const middle = (low + high) / 2;
      const here = at(model, middle);
      if (here !== null && here.gain >= 1) {
        high = middle;
        found = here;
      } else low = middle;
    }
    return { amplitude: found.slide, frequency: found.w / (2 * Math.PI) };
  }
  return null;
}

/** The loop as a swing feels it of which half the play is this share of the wind-up. */
function at(model: AxisModel, share: number): Answer | null {
  const { transmission, slide, motor } = model;
  const left = springLeft(share);
  const windUp = transmission.backlash / 2 / share;
  const soft = {
    stiffness: transmission.stiffness * left,
    damping: transmission.damping * left,
    backlash: 0,
  };
  const r = travelPerRadian(model);
  let dragSlide = 0;
  let dragMotor = 0;
  let answer: Answer | null = null;
  for (let turn = 0; turn < TURNS; turn++) {
    const felt = {
      ...model,
      transmission: { ...transmission, ...soft },
      slide: { ...slide, viscous: slide.viscous + dragSlide },
      motor: { ...motor, viscous: motor.viscous + dragMotor },
    } as AxisModel;
    const cross = crossing(felt);
    if (cross === null) return null;
    // The slide's way from the pull of the softened spring on its mass and friction.
    const s = complex(0, cross.w);
    const mass = inertias(model).slideSide / (r * r);
    const pull = add(complex(soft.stiffness), times(complex(soft.damping), s));
    const resists = times(s, add(times(complex(mass), s), complex(felt.slide.viscous)));
    const ratio = over(pull, resists);
    const far = size(ratio) * windUp;
    const motorFar = (size(add(ratio, complex(1))) * windUp) / r;
    answer = { ...cross, slide: far };
    dragSlide = (4 * slide.coulomb) / (Math.PI * cross.w * far);
    dragMotor = (4 * motor.coulomb) / (Math.PI * cross.w * motorFar);
  }
  return answer;
}

/** Where the open loop turns a sine by half a turn with the greatest gain. */
function crossing(model: AxisModel): { readonly gain: number; readonly w: number } | null {
  const { control } = model;
  const top = control.sample > 0 ? Math.min(3e3, Math.PI / control.sample) : 3e3;
  const ratio = (top / LOWEST) ** (1 / (FREQUENCIES - 1));
  let best: { gain: number; w: number } | null = null;
  let last: Complex = openLoop(model, 'whole', LOWEST);
  for (let k = 1; k < FREQUENCIES; k++) {
    const here = openLoop(model, 'whole', LOWEST * ratio ** k);
    // Passed the other way, the loop is one that its gain holds steady from below; there it does not swing.
    if (last.im < 0 && here.im >= 0 && last.re < 0 && here.re < 0) {
      const along = last.im / (last.im - here.im);
      const w = LOWEST * ratio ** (k - 1 + along);
      const gain = -openLoop(model, 'whole', w).re;
      if (gain > 0 && (best === null || gain > best.gain)) best = { gain, w };
    }
    last = here;
  }
  return best;
}
