/** What mends a fault, by the part of the circuit it strikes. */
import type { FaultPlace } from './fault-place.ts';

export interface RemedyFor {
  readonly place: FaultPlace;
  /** The element it is in. */
  readonly element: string;
  /** It can keep the machine moving, or start it. */
  readonly dangerous: boolean;
  /** A short past a contact, or a wire on the wrong potential; else the device itself has failed. */
  readonly short: boolean;
  /** A wire on the frame. */
  readonly frame: boolean;
  /** Whether the 0 V of its supply is earthed; undefined where it has none. */
  readonly earthed: boolean | undefined;
  /** Its opening contacts are mirror contacts or force-guided. */
  readonly linked: boolean;
}

const SUPERVISED =
  'A supervised reset that acts on the falling edge: the start counts only in the moment in which the button is let go, so one that is stuck, bridged or fed past its contact starts nothing and is noticed (monitored manual reset, ISO 13850 and IEC 60204-1; the falling edge, ISO 13849-1, 5.2.2; from memory). A safety relay has it.';
const BEHIND =
  'Take the power away behind the enable, by contactors or safe torque off that the stop opens itself: an enable is no stop.';
const WATCHED =
  'Let the enable be watched: bring it back to an input of the control that refuses a start while it is on, or put a force-guided relay beside it with its opening contact in the start path.';
const REPORT =
  'No wire outside the drive shows it: bring the drive’s own report that it is enabled to an input of the control, which refuses a start while it stays.';
const COMPARED =
  'something that compares the two: a safety relay, or mirror contacts of two contactors in the start path';

/** A sentence or two. Every place has its own; where no wiring helps, the test that does. */
export function remedyFor(asked: RemedyFor): string {
  const { place, element, dangerous, short, frame, earthed, linked } = asked;
  if (frame) return onFrame(place, earthed);
  switch (place) {
    case 'start':
      return SUPERVISED;
    case 'enable':
    case 'output':
      return dangerous ? `${BEHIND} ${WATCHED}` : `The power is taken away behind it already. ${WATCHED}`;
    case 'input':
      return dangerous ? `${BEHIND} ${REPORT}` : `The power is taken away without it. ${REPORT}`;
    case 'told':
    case 'ear':
      return dangerous
        ? 'Take the power away by contactors or safe torque off that the stop opens itself: an input of the control only asks.'
        : 'The power is taken away without it; only the control is not told. A second input that closes when this one opens lets the control compare the two.';
    case 'channel':
      return dangerous
        ? `A second contact in a channel of its own that takes the power away too, and ${COMPARED}.`
        : `Each channel has its second; what is missing is ${COMPARED}.`;
    case 'power':
      if (short)
        return 'No mirror contact sees a short past a main contact. Lay and fix the wires before and behind the contactor apart from each other inside the cabinet; then it may be left out of account (ISO 13849-2, table D.4; from memory). Once a year try each contactor by itself: the power must go.';
      return dangerous
        ? 'A second contactor in a row with this one, each with a mirror contact in the start path.'
        : `A mirror contact of ${element} in the start path${linked ? '' : ': an opening contact that cannot close while a main contact is stuck (IEC 60947-4-1, annex F; from memory)'}.`;
    case 'relay':
      return short
        ? `Lay the two wires apart; and put a force-guided contact that opens with ${element} in the start path or the enable, tried once a year.`
        : `Force-guided contacts in ${element}, and one that opens with it in the start path or the enable.`;
    case 'proof':
      return short
        ? `A test once a year, power off and locked: push the armature of ${element} in by hand, and measure that no current gets past this contact.`
        : `A test once a year, power off and locked: push the armature of ${element} in by hand; this contact must open.`;
    case 'torque-off':
      return dangerous
        ? 'A second channel of safe torque off, which the drive compares with the first, or contactors before the drive.'
        : 'The other channel of safe torque off stops it; a drive that compares its two channels refuses to start. Try each channel by itself.';
    case 'brake':
      return 'Let the brake lose its current first and on both sides of its coil, and keep the drive holding until it has closed.';
    case 'lock':
      return 'Switch both sides of the lock’s coil, through contacts that are open while a contactor is in; a standstill monitor. Test the lock while the spindle turns.';
    case 'cable':
      return 'A sheathed cable of its own for each channel; or a safety relay that feeds its channels with different signals and notices when they touch.';
    case 'unit':
      return 'The unit looks at its own contacts at each start; its maker answers for that. Ask for its category and level.';
    case 'latch':
      return 'The button is replaced; look at every use whether it stays in. The start behind it must be a button of its own, so that its springing back starts nothing.';
    case 'delay':
      return 'Time the stop whenever the machine is tested.';
    case 'none':
      return 'Nothing in this circuit; test it by hand, see the test sheet.';
  }
}

function onFrame(place: FaultPlace, earthed: boolean | undefined): string {
  if (place === 'power')
    return 'The protective conductor and the breaker or residual-current device before the drives are there for that; measure the insulation of the power circuits, see the test sheet.';
  return earthed
    ? 'Put the contact on the plus side of the coil, which hangs on 0 V for good: then the first touch melts the fuse in plus.'
    : 'Earth 0 V at one point and fuse the plus, so that the first touch melts the fuse; contacts always on the plus side of coils.';
}
