import { BUS, FALLS, MOVES, symptom } from './types.ts';

export const hums = symptom({
  id: 'hums',
  title: 'An axis hums, hunts or shakes at rest',
  about: 'It holds its place, but sings, buzzes or swings to and fro.',
  words: 'noise noisy whine whines sings buzzes vibrates vibration oscillates hot warm heat rattles squeals',
  ask: 'somebody with an oscilloscope who has tuned servo axes',
  causes: {
    gain: {
      says: 'Gains too high for the load it has now',
      is: 'asleep',
      often: 5,
      mend: 'Write the settings down, then turn the gain down by a quarter at a time.',
    },
    play: {
      says: 'Play or a loose part between motor and slide',
      is: 'dead',
      often: 4,
      mend: 'Coupling, belt, thrust bearings and nut: find which moves, tighten or replace it.',
    },
    tacho: {
      says: 'Dirty or worn tacho: its voltage ripples',
      is: 'dead',
      often: 3,
      mend: 'Blow out and clean it, new brushes; else another one.',
    },
    brushes: {
      says: 'Motor brushes or commutator dirty',
      is: 'dead',
      often: 2,
      mend: 'Clean the commutator, bed new brushes.',
    },
    shield: {
      says: 'Interference: a shield or earth of feedback or command is off',
      is: 'asleep',
      often: 4,
      mend: 'Connect shields where they were; keep motor and signal leads apart.',
    },
    stick: {
      says: 'The slide sticks: dry ways, gib too tight; the integrator hunts',
      is: 'asleep',
      often: 4,
      mend: 'Oil, gib, wipers; only then less integral gain.',
    },
    stepper: {
      says: 'It is a stepping motor: a hum at rest is its holding current',
      is: 'asleep',
      often: 2,
      mend: 'Nothing, or less current at rest if the axis allows it.',
    },
    encoder: {
      says: 'An encoder line drops out or flickers',
      is: 'dead',
      often: 2,
      mend: 'Cable, supply volts, then the encoder.',
    },
  },
  tests: {
    kind: {
      question: 'Is it a stepping motor, and only hums?',
      how: 'Four, six or eight leads, and it cogs by hand with the power off.',
      tool: 'eyes and ears',
      trouble: 1,
      answers: {
        stepper: { says: 'Yes', fits: ['stepper'] },
        servo: { says: 'No', fits: ['gain', 'play', 'tacho', 'brushes', 'shield', 'stick', 'encoder'] },
      },
    },
    pitch: {
      question: 'Slow swinging, a steady tone, or ragged?',
      how: 'Listen, and lay a hand on the slide.',
      tool: 'ears, hand',
      trouble: 1,
      answers: {
        slow: { says: 'Slow swinging, a few times a second', fits: ['stick', 'play', 'gain'] },
        tone: { says: 'A steady tone', fits: ['gain', 'play'] },
        ragged: { says: 'Ragged, crackling', fits: ['tacho', 'brushes', 'shield', 'encoder'] },
      },
    },
    changed: {
      question: 'Did it begin after a load, a motor or a setting was changed?',
      how: 'Think back: vice or chuck, new motor, drive turned.',
      tool: 'memory',
      trouble: 1,
      answers: {
        yes: { says: 'Yes', fits: ['gain', 'shield', 'play', 'tacho', 'brushes', 'stick', 'encoder'] },
        no: {
          says: 'No, it came by itself',
          fits: ['play', 'tacho', 'brushes', 'shield', 'stick', 'encoder'],
        },
      },
    },
    'push-slide': {
      question:
        'With the drive on, does the slide move against a gauge when you push it, while the motor stands?',
      how: 'Gauge on the slide, lever or hand both ways, somebody watching the motor shaft.',
      tool: 'dial gauge',
      caution: MOVES,
      trouble: 2,
      answers: {
        moves: { says: 'More than a few hundredths', fits: ['play'] },
        firm: { says: 'Firm', fits: ['gain', 'tacho', 'brushes', 'shield', 'stick', 'encoder'] },
      },
    },
    oil: {
      question: 'Does it quieten when the ways are oiled and the gib is eased?',
      how: 'Oil, run the travel by hand a few times, ease the gib screws by an eighth.',
      tool: 'way oil, screwdriver',
      caution: FALLS,
      trouble: 2,
      answers: {
        yes: { says: 'Yes', fits: ['stick'] },
        no: { says: 'No', fits: ['gain', 'play', 'tacho', 'brushes', 'shield', 'encoder'] },
      },
    },
    'less-gain': {
      question: 'Does a quarter less gain stop it?',
      how: 'Write the setting down, turn it down a quarter, try, put it back if nothing changes.',
      tool: 'screwdriver or settings page',
      caution: MOVES,
      trouble: 2,
      answers: {
        yes: { says: 'Yes', fits: ['gain', 'play'] },
        no: { says: 'No', fits: ['tacho', 'brushes', 'shield', 'encoder', 'stick'] },
      },
    },
    neighbours: {
      question: 'Does it change when spindle or another axis runs, or a lead is moved?',
      how: 'Watch the position display at rest while something else is switched on; then move the signal leads away from the motor leads.',
      tool: 'eyes',
      caution: BUS,
      trouble: 2,
      answers: {
        yes: { says: 'Yes', fits: ['shield'] },
        no: { says: 'No', fits: ['tacho', 'brushes', 'encoder', 'gain', 'play', 'stick'] },
      },
    },
    'by-place': {
      question: 'Does it come once a turn of the motor, at the same shaft positions?',
      how: 'Jog slowly and mark the pulley where it is worst.',
      tool: 'felt pen',
      caution: MOVES,
      trouble: 2,
      answers: {
        turn: { says: 'Yes', fits: ['tacho', 'brushes', 'encoder'] },
        no: { says: 'No', fits: ['gain', 'play', 'shield', 'stick'] },
      },
    },
    'open-tacho': {
      question: 'Which looks dirty or worn: tacho, motor commutator, or neither?',
      how: 'Locked off and bus empty: take tacho cover and brush caps off and look. Black dust, uneven bars, short brushes.',
      tool: 'screwdriver, torch',
      caution: BUS,
      trouble: 3,
      answers: {
        tacho: { says: 'The tacho', fits: ['tacho'] },
        motor: { says: 'The commutator', fits: ['brushes'] },
        neither: { says: 'Neither', fits: ['encoder', 'gain', 'play', 'shield', 'stick'] },
      },
    },
  },
});
