import { found, type Rule } from '../check/rule.ts';

/** More wires in a net than hold it together. */
export const loop: Rule = {
  id: 'loop',
  title: 'Does a ring of wires matter here?',
  of: 'net',
  judge: (view, id) => {
    const net = view.net(id)!;
    const spare = view.spare(net);
    if (spare <= 0) return [];
    const earth = view.inNet(net, 'earth').length > 0;
    const zero =
      view.inNet(net, 'common').length > 0 ||
      view.inNet(net, 'feed').length > 0 ||
      view.inNet(net, 'supply').length > 0;
    const signal = [
      'input',
      'output',
      'differential-input',
      'differential-output',
      'analogue-input',
      'analogue-output',
    ].some((kind) => view.inNet(net, kind).length > 0);
    const how = `The wires at ${id} make ${spare === 1 ? 'a ring' : `${spare} rings`}`;
    return [
      earth || zero || signal
        ? found(
            loop,
            [id],
            'tight',
            `${how}: there are two ways from one terminal to another. ${earth ? 'In protective earth and 0 V' : zero ? 'In a supply or its 0 V' : 'In a signal'} such a ring picks up what motors radiate, and a broken wire is not noticed.`,
            {
              remedy: 'Take one of them off, unless it is meant as a second way.',
            },
          )
        : found(loop, [id], 'fits', `${how}; that is allowed, and does no harm here.`),
    ];
  },
};
