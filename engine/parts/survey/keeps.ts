/** What only the old control knows. It goes with the battery, or with the first board that is unplugged. Common practice, no source. */
import type { KeepSpec } from './types.ts';

export const KEEPS: readonly KeepSpec[] = [
  {
    id: 'battery',
    what: 'Battery: its date, and that it is alive',
    why: 'Parameters, offsets and the ladder are in a memory that forgets everything when this battery dies.',
    how: 'Read the date on it and measure its volts. Save everything below first; then change it, with the control switched on if its manual says so.',
    caution:
      'On many controls the memory is lost the moment the battery is out while the power is off. Live parts are near: no tool may slip.',
  },
  {
    id: 'parameters',
    what: 'Parameters of the machine',
    why: 'They hold the scale of each axis, its limits, speeds, accelerations and gains, as its maker tuned it.',
    how: 'Send them out over the serial port, or page through the screen and photograph every page, straight on and sharp.',
  },
  {
    id: 'drive-parameters',
    what: 'Parameters of the drives',
    why: 'Motor data, gains and current limits of motors that may stay.',
    how: 'On the display of each drive, page by page; on older drives see the potentiometers below.',
  },
  {
    id: 'drive-potentiometers',
    what: 'Potentiometers and links on the drives',
    why: 'Older drives keep their tuning in the position of small screws.',
    how: 'A photo straight from the front, and the ohms or volts at the test points if the drawing names them. Turn nothing.',
  },
  {
    id: 'dip-switches',
    what: 'DIP switches and jumpers',
    why: 'They set addresses, ways of working and what stands for “on”.',
    how: 'A photo of every board so sharp that each small lever shows, with the name of the board in the picture.',
  },
  {
    id: 'rotary-switches',
    what: 'Rotary switches and their positions',
    why: 'Override switches and mode switches send codes; their order is needed to use them again.',
    how: 'A photo of every switch, back and front, and a table of position against closed contacts.',
  },
  {
    id: 'pitch-errors',
    what: 'Pitch error tables',
    why: 'What the maker measured of each screw; with the same screw it is worth having.',
    how: 'Among the parameters, or pages of their own: print or photograph them with the interval and the origin.',
  },
  {
    id: 'backlash',
    what: 'Backlash values',
    why: 'They tell how worn each screw was when somebody last set it.',
    how: 'Among the parameters; write down the unit.',
  },
  {
    id: 'reference-positions',
    what: 'Reference points and soft limits',
    why: 'Where the machine’s own zero lies, seen from its end stops.',
    how: 'Among the parameters. Mark each slide with the scriber at its reference point too.',
  },
  {
    id: 'offsets',
    what: 'Tool and work offsets',
    why: 'Somebody’s jobs still need them, and they show the sense of the axes.',
    how: 'Print or photograph the tables.',
  },
  {
    id: 'programs',
    what: 'Part programs and macros',
    why: 'They show which codes this machine had; tool change and probing are often macros.',
    how: 'Send them out over the serial port; macros that are locked can only be asked for.',
  },
  {
    id: 'ladder',
    what: 'Ladder or logic program',
    why: 'In which order everything moves: tool change, gear shift, clamps, interlocks.',
    how: 'A print-out in the cabinet door is the best copy. Else the screen, page by page.',
  },
  {
    id: 'timers',
    what: 'Timers, counters and kept relays of the logic',
    why: 'How long it waits for oil pressure, a gear, a turret; values are often on another page than the ladder.',
    how: 'Photograph the pages; write down the unit, which is often 8 or 50 ms a step.',
  },
  {
    id: 'signal-list',
    what: 'List of inputs and outputs',
    why: 'Every wire with its address and what it means.',
    how: 'In the drawings, or on the diagnosis pages: photograph them with the machine at rest, door open, door shut.',
  },
  {
    id: 'spindle-tables',
    what: 'Spindle gears and speeds',
    why: 'Ratios, change-over speeds and the voltage for full speed.',
    how: 'Among the parameters; and measure: command voltage against speed at five speeds in each gear.',
  },
  {
    id: 'm-codes',
    what: 'Table of M, S and T codes',
    why: 'What people of this machine are used to, and what old programs call.',
    how: 'In the operator’s book, or a list kept beside the machine.',
  },
  {
    id: 'alarms',
    what: 'Machine maker’s alarm texts',
    why: 'They name the interlocks that must not be forgotten.',
    how: 'In the book, or in the ladder’s message table.',
  },
  {
    id: 'drawings',
    what: 'Electrical, hydraulic and mechanical drawings',
    why: 'Wire numbers, valve sizes, bearing numbers: each hour here saves a day.',
    how: 'In the door pocket; photograph every sheet flat in daylight, also the hand-written corrections.',
  },
  {
    id: 'cabinet-photos',
    what: 'Photos of the whole cabinet and of every connector',
    why: 'How it was before the first wire came off.',
    how: 'Whole, then each plate, then each terminal strip so near that wire numbers can be read.',
    caution: 'Take them locked off and with the doors as they are; no camera arm between live parts.',
  },
  {
    id: 'board-labels',
    what: 'Labels of boards, memory chips and versions',
    why: 'Needed to sell or mend the old control, and to find its manuals.',
    how: 'A photo of every label and chip sticker.',
  },
];
