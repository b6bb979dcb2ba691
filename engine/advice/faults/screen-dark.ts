import { BUS, MAINS, symptom } from './types.ts';

export const screenDark = symptom({
  id: 'screen-dark',
  title: 'The screen stays dark',
  about: 'The machine is switched on, and nothing is seen on the screen.',
  words: 'black blank display monitor picture dead boot start nothing seen',
  ask: 'somebody with a screen of the same kind to plug in, or who repairs industrial boards',
  causes: {
    mains: {
      says: 'No mains: plug, main switch, or a fuse at the board',
      is: 'asleep',
      often: 4,
      mend: 'Have plug, main switch and fuses looked at by an electrician.',
    },
    fuse: {
      says: 'The fuse of the control’s transformer or supply has blown',
      is: 'asleep',
      often: 5,
      mend: 'Replace it once, with the same value and kind. Never a stronger one.',
    },
    switch: {
      says: 'The control’s own on-circuit is open: key switch, on-button, door of the cabinet, interlock',
      is: 'asleep',
      often: 4,
      mend: 'Follow the on-circuit on the drawing from contact to contact.',
    },
    supply: {
      says: 'The control’s DC supply is dead',
      is: 'dead',
      often: 4,
      mend: 'An ordinary supply of the same volts and at least the same amperes takes its place.',
    },
    short: {
      says: 'Something pulls the DC supply down: a board, a switch or a wire to the frame',
      is: 'dead',
      often: 2,
      mend: 'Unplug loads one by one until the volts come back; mend the last one.',
    },
    backlight: {
      says: 'The screen’s own lamp or its high voltage is dead',
      is: 'dead',
      often: 3,
      mend: 'A new lamp or another screen; the control itself works.',
    },
    cable: {
      says: 'Brightness turned down, or the cable of the screen is loose',
      is: 'asleep',
      often: 2,
      mend: 'Turn it up; locked off, push each plug home.',
    },
    board: {
      says: 'The control’s processor board is dead or has lost its program',
      is: 'dead',
      often: 2,
      mend: 'Before you give it up, save what else it knows; then a new control.',
    },
  },
  tests: {
    'anything-lives': {
      question: 'Does anything else live: a lamp, a fan, a hum?',
      how: 'Switch on and look at work light, panel lamps and cabinet fans; listen at the cabinet door without opening it.',
      tool: 'eyes and ears',
      trouble: 1,
      answers: {
        yes: {
          says: 'Yes, something',
          fits: ['fuse', 'switch', 'supply', 'short', 'backlight', 'cable', 'board'],
        },
        no: { says: 'Nothing at all', fits: ['mains', 'fuse', 'switch'] },
      },
    },
    'keys-answer': {
      question: 'Does the control answer in another way: key lamps, beeps, a click of relays?',
      how: 'Wait two minutes after switching on; press keys with lamps beside them and listen.',
      tool: 'eyes and ears',
      trouble: 1,
      answers: {
        yes: { says: 'Yes', fits: ['backlight', 'cable'] },
        no: { says: 'No', fits: ['mains', 'fuse', 'switch', 'supply', 'short', 'board', 'cable'] },
      },
    },
    'faint-picture': {
      question: 'Is a faint picture there under a torch?',
      how: 'Room dark, a torch held flat to the glass; turn the brightness up.',
      tool: 'torch',
      trouble: 1,
      answers: {
        yes: { says: 'Yes, faint', fits: ['backlight'] },
        bright: { says: 'It comes back with the brightness', fits: ['cable'] },
        no: {
          says: 'No',
          fits: ['mains', 'fuse', 'switch', 'supply', 'short', 'board', 'cable', 'backlight'],
        },
      },
    },
    'board-fuses': {
      question: 'Do other machines on the same mains run?',
      how: 'Try a lamp at the same board; look for a fuse or breaker that is out.',
      tool: 'a lamp',
      trouble: 1,
      answers: {
        no: { says: 'No, or a breaker is out', fits: ['mains'] },
        yes: {
          says: 'Yes',
          fits: ['mains', 'fuse', 'switch', 'supply', 'short', 'backlight', 'cable', 'board'],
        },
      },
    },
    fuses: {
      question: 'Is a fuse in the cabinet blown?',
      how: 'Take each fuse of the control circuit out and measure it on ohms; a whole one reads nearly nothing.',
      tool: 'meter',
      caution: MAINS,
      trouble: 2,
      answers: {
        blown: { says: 'One is blown', fits: ['fuse', 'short'] },
        whole: {
          says: 'All are whole',
          fits: ['mains', 'switch', 'supply', 'short', 'backlight', 'cable', 'board'],
        },
      },
    },
    'fuse-again': {
      question: 'Does a new fuse of the same value hold?',
      how: 'Replace it once and switch on, cabinet shut.',
      tool: 'a fuse of the same value and kind',
      caution: MAINS,
      trouble: 2,
      answers: {
        holds: { says: 'It holds', fits: ['fuse'] },
        again: { says: 'It blows again', fits: ['short'] },
      },
    },
    'dc-volts': {
      question: 'Are the DC volts of the control there?',
      how: 'Meter on DC at the test points or output terminals of the supply: 5, 12 or 24 V as printed, within 5 %.',
      tool: 'meter',
      caution:
        'Mains stands in the same cabinet: if you are not used to measuring live, have an electrician do it.',
      trouble: 3,
      answers: {
        right: { says: 'As printed', fits: ['backlight', 'cable', 'board'] },
        low: { says: 'There, but too low', fits: ['supply', 'short'] },
        none: { says: 'None', fits: ['mains', 'fuse', 'switch', 'supply', 'short'] },
      },
    },
    'mains-in': {
      question: 'Does mains reach the input of that supply?',
      how: 'Have an electrician measure at its input terminals, cabinet open and on.',
      tool: 'electrician with a meter',
      caution: MAINS,
      trouble: 4,
      answers: {
        yes: { says: 'Yes', fits: ['supply', 'short', 'backlight', 'cable', 'board'] },
        no: { says: 'No', fits: ['mains', 'fuse', 'switch'] },
      },
    },
    unload: {
      question: 'Do the volts come back with the loads unplugged?',
      how: 'Locked off, unplug everything from the DC side of the supply; switch on and measure it alone.',
      tool: 'meter, labels for the plugs',
      caution: BUS,
      trouble: 3,
      answers: {
        back: { says: 'They come back', fits: ['short'] },
        still: { says: 'Still missing', fits: ['supply'] },
      },
    },
    'another-screen': {
      question: 'Does another screen on the same plug show a picture?',
      how: 'Locked off, plug in a screen of the same kind of signal, then switch on.',
      tool: 'a screen that suits, borrowed',
      caution: BUS,
      trouble: 5,
      answers: {
        shows: { says: 'It shows one', fits: ['backlight', 'cable'] },
        dark: { says: 'It stays dark too', fits: ['mains', 'fuse', 'switch', 'supply', 'short', 'board'] },
      },
    },
  },
});
