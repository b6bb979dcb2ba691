/** What a meter should show everywhere in a wiring of 450 and of 4800 wires, worked out from the start; part of wiring.mjs. */
import { ringItOut } from '../dist/engine/circuit/readings/index.js';
import { readWiring } from '../dist/engine/circuit/wiring/read.js';
import { cellsOf } from './wiring-network.mjs';

export function ringOutCase(seconds, median) {
  const ringing = (cells) => {
    const read = readWiring(cellsOf(cells));
    let sheet;
    const rounds = Array.from({ length: 3 }, () =>
      seconds(() => {
        sheet = ringItOut(read);
      }),
    );
    const readings = sheet.steps.reduce((sum, { rows }) => sum + rows.length, 0);
    return { wires: read.wires.size, readings, taken: median(rounds) };
  };
  // Once beforehand, so that neither pays for the warming up.
  ringing(13);
  const both = [13, 140].map(ringing);
  for (const { wires, readings, taken } of both)
    console.log(
      `${wires} wires rung out: ${readings} readings in ${taken.toFixed(2)} s, ${((taken / wires) * 1e6).toFixed(0)} µs a wire`,
    );
  const [small, large] = both.map(({ wires, taken }) => taken / wires);
  console.log(`a wire of the large one takes ${(large / small).toFixed(2)} times as long to ring out`);
}
