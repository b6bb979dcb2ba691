/** Made-up networks of any size, for tests and timings. */

/**
 * Cells of one axis each on a common 24 V: a drive with its motor and encoder, two sensors, a relay with a valve, a
 * fuse, an input and output unit; some 80 terminals a cell.
 */
export function cellsOf(count) {
  const devices = [
    'G1 supply current=500_A',
    'X9 earth-bar ways=200',
    'X0 mains-inlet volts=230_V',
    `XP strip ways=${count + 1} bridges=1-${count + 1}`,
    `XN strip ways=${count + 1} bridges=1-${count + 1}`,
  ];
  const wires = [
    ['m1', 'X0.PE X9.200'],
    ['m2', 'X0.L1 G1.L'],
    ['m3', 'X0.N G1.N'],
    ['m4', 'G1.PE X9.199'],
    ['m5', `G1.plus XP.${count + 1}`],
    ['m6', `G1.minus XN.${count + 1}`],
  ];
  const cables = {};
  for (let n = 0; n < count; n++) {
    const c = `c${n}`;
    const lay = (id, run) => wires.push([`${c}-${id}`, run]);
    devices.push(
      `A${n} control pulse-axes=X output-level=open-collector output-current=20_mA output-withstands=30_V inputs=8 outputs=4 input-form=sinking current=0.2_A switch-current=0.5_A`,
      `T${n} drive motor=brushed command=pulses input-level=opto-24v feedback=differential`,
      `M${n} servo-motor type=brushed`,
      `B${n} encoder lines=differential current=100_mA rate=50_kHz`,
      `S${n} sensor output=PNP current=10_mA output-current=200_mA`,
      `K${n} relay coil-current=40_mA suppressor=clamp dc-volts=24_V dc-coil-amps=2_A`,
      `Y${n} valve coil-current=0.5_A suppressor=diode`,
      `F${n} fuse amps=6_A`,
      `X${n}p strip ways=6 bridges=1-6`,
      `X${n}n strip ways=6 bridges=1-6`,
    );
    cables[`W${n}e`] = { length: '5 m', section: '0.5 mm²', shield: 'braid' };
    cables[`W${n}m`] = { length: '5 m', section: '1.5 mm²', shield: 'braid' };
    lay('f1', `XP.${n + 1} F${n}.1`);
    lay('f2', `X${n}p.1 A${n}.plus`);
    lay('f3', `A${n}.minus X${n}n.1`);
    lay('f5', `F${n}.2 X${n}p.6`);
    lay('f6', `XN.${n + 1} X${n}n.6`);
    lay('f4', `A${n}.in-com A${n}.minus`);
    lay('s1', `X${n}p.2 S${n}.BN`);
    lay('s2', `S${n}.BU X${n}n.2`);
    lay('s3', `S${n}.BK A${n}.in1`);
    lay('d1', `X${n}p.3 T${n}.STEP+`);
    lay('d2', `A${n}.X-step T${n}.STEP-`);
    lay('d3', `X${n}p.3 T${n}.DIR+`);
    lay('d4', `A${n}.X-dir T${n}.DIR-`);
    lay('d5', `A${n}.GND A${n}.minus`);
    lay('d6', `A${n}.enable T${n}.EN`);
    lay('d7', `T${n}.COM X${n}n.3`);
    lay('k1', `A${n}.out1 K${n}.A1`);
    lay('k2', `K${n}.A2 X${n}n.4`);
    lay('k3', `X${n}p.4 K${n}.13`);
    lay('k4', `K${n}.14 Y${n}.A1`);
    lay('k5', `Y${n}.A2 X${n}n.4`);
    lay('m1', `T${n}.M+ M${n}.M+ / W${n}m`);
    lay('m2', `T${n}.M- M${n}.M- / W${n}m`);
    lay('m3', `T${n}.M-SH M${n}.SH / W${n}m`);
    for (const line of ['A+', 'A-', 'B+', 'B-', 'Z+', 'Z-', '5V', '0V'])
      lay(`e${line}`, `B${n}.${line} T${n}.E-${line} / W${n}e`);
    lay('p1', `M${n}.PE X9.${1 + ((2 * n) % 190)}`);
    lay('p2', `T${n}.PE X9.${2 + ((2 * n) % 190)}`);
  }
  const settings = (text) =>
    Object.fromEntries(
      text.map((each) => [
        each.slice(0, each.indexOf('=')),
        each.slice(each.indexOf('=') + 1).replaceAll('_', ' '),
      ]),
    );
  return {
    devices: Object.fromEntries(
      devices.map((text) => {
        const [id, kind, ...rest] = text.split(' ');
        return [
          id,
          {
            id,
            kind,
            name: '',
            part: null,
            where: 'cabinet',
            settings: settings(rest),
            terminals: {},
            pins: {},
          },
        ];
      }),
    ),
    wires: Object.fromEntries(
      wires.map(([id, run]) => {
        const [path, cable] = run.split(' / ');
        const [from, to] = path.split(' ');
        return [id, { id, from, to, cable: cable ?? null, settings: {} }];
      }),
    ),
    cables: Object.fromEntries(
      Object.entries(cables).map(([id, own]) => [id, { id, name: id, settings: own }]),
    ),
    settings: {},
  };
}

/**
 * Such cells, each fed by a supply of its own that hangs behind a breaker on one of three phases, with every wire's area
 * and length said: a supply from the mains socket down to the last sensor. Some 100 terminals a cell.
 */
export function suppliedCells(count) {
  const { devices, wires, cables } = cellsOf(count);
  const { G1: _, XP: __, XN: ___, ...own } = devices;
  const kept = Object.fromEntries(Object.entries(wires).filter(([id]) => !/^m\d$|-f[16]$/.test(id)));
  const device = (id, kind, settings) => {
    own[id] = { id, kind, name: '', part: null, where: 'cabinet', settings, terminals: {}, pins: {} };
  };
  const lay = (id, from, to, section, length) => {
    kept[id] = { id, from, to, cable: null, settings: { section, length } };
  };
  device('X0', 'mains-inlet', { volts: '230 V', hertz: '50 Hz', current: '500 A', phases: 'three' });
  for (const phase of ['L1', 'L2', 'L3', 'N']) {
    const parts = Math.ceil(count / 100);
    for (let part = 0; part < parts; part++) {
      const ways = Math.min(100, count - 100 * part) + 1;
      device(`X${phase}${part}`, 'strip', { ways: `${ways}`, bridges: `1-${ways}` });
      lay(`m${phase}${part}`, `X0.${phase}`, `X${phase}${part}.${ways}`, '150 mm²', '2 m');
    }
  }
  for (let n = 0; n < count; n++) {
    const strip = (phase) => `X${phase}${Math.floor(n / 100)}.${1 + (n % 100)}`;
    device(`F${n}m`, 'breaker', { amps: '6 A', curve: 'C' });
    device(`G${n}`, 'supply', { volts: '24 V', current: '5 A' });
    lay(`c${n}-g1`, strip(`L${1 + (n % 3)}`), `F${n}m.1`, '2.5 mm²', '1 m');
    lay(`c${n}-g2`, `F${n}m.2`, `G${n}.L`, '2.5 mm²', '1 m');
    lay(`c${n}-g3`, `G${n}.N`, strip('N'), '2.5 mm²', '1 m');
    lay(`c${n}-g4`, `G${n}.plus`, `F${n}.1`, '1.5 mm²', '0.5 m');
    lay(`c${n}-g5`, `G${n}.minus`, `X${n}n.6`, '1.5 mm²', '0.5 m');
  }
  for (const [id, wire] of Object.entries(kept))
    if (wire.cable === null && Object.keys(wire.settings).length === 0)
      kept[id] = { ...wire, settings: { section: '0.75 mm²', length: '1.5 m' } };
  const settings = { together: '3', 'cabinet-temperature': '40 °C', 'outside-temperature': '30 °C' };
  return { devices: own, wires: kept, cables, settings };
}
