import fc from 'fast-check';
import { stock } from '../classics/stock';

/** Lengths as makers write them, from a slip of the unit to what is right. */
const length = (min: number, max: number) =>
    fc.oneof(
        fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => `${n / 100} mm`),
        fc.integer({ min: Math.round(min * 40), max: Math.round(max * 40) }).map((n) => `${n} thou`),
        {
            weight: 1,
            arbitrary: fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => `${n / 100} in`),
        },
    );
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const settings = fc.record({
    power: maybe(fc.integer({ min: 5, max: 130 })),
    speed: maybe(fc.integer({ min: 20, max: 900 })),
    passes: maybe(fc.integer({ min: 1, max: 40 })),
    pitch: maybe(fc.integer({ min: 2, max: 60 })),
});
const settled = ({ power, speed, passes, pitch }: Partial<Record<'power' | 'speed' | 'passes' | 'pitch', number | undefined>>) =>
    [
        power === undefined ? '' : `    power ${power} %`,
        speed === undefined ? '' : `    speed ${speed} mm/s`,
        passes === undefined ? '' : `    passes ${passes}`,
        pitch === undefined ? '' : `    pitch ${pitch / 100} mm`,
    ]
        .filter((line) => line !== '')
        .join('\n');

const halves = fc
    .record({
        art: fc.constantFrom('cleat', 'buoy', 'oars'),
        other: fc.constantFrom('same', 'same', 'same', 'cleat', 'oars'),
        depth: fc.oneof(length(0.1, 1.5), length(1, 13), fc.constant('through')),
        clearance: maybe(length(0, 0.6)),
        pocketOffset: maybe(length(-0.2, 0.4)),
        reliefOffset: maybe(length(-0.2, 0.2)),
        mirror: fc.constantFrom('mirror', 'mirror', 'mirror', '', 'mirror\n    mirror'),
        inverse: fc.constantFrom(' inverse within grown 6 mm', ' inverse within grown 6 mm', '', ' inverse within circle 20 mm'),
        backing: fc.constantFrom('backing foil', 'backing tape', ''),
        at: fc.constantFrom('', ' at 80, 60 mm', ' at 20, 110 mm', ' at 200, 60 mm'),
        marks: maybe(fc.integer({ min: 1, max: 6 })),
        set: settings,
        reliefSet: fc.oneof({ weight: 3, arbitrary: fc.constant({}) }, settings),
        wait: maybe(fc.integer({ min: 1, max: 30 })),
        peel: fc.boolean(),
        take: maybe(length(0.01, 1)),
        flush: fc.boolean(),
        grits: fc.constantFrom('120, 180, 240', '60, 240', '240, 120', '60, 400, 120', '180'),
        air: fc.constantFrom('air off', 'air on', ''),
        scan: fc.constantFrom('scan across grain', 'scan along grain', ''),
        grain: fc.constantFrom('grain along width', 'grain along height', ''),
        check: maybe(fc.integer({ min: 10, max: 150 }).map((n) => n / 100)),
        finishFirst: fc.boolean(),
        seal: fc.constantFrom('', '', 'seal plank with shellac { coats 2 }\n  wait 2 h'),
        touched: fc.constantFrom('', '', 'touched by food', 'touched by hands'),
    })
    .map(
        (p) => `${stock}
recipe cleat-board "Cleat board" {
  revision 1
  make 2
  laser slip
  art cleat "cleat.svg"
  art buoy "buoy.svg"
  art oars "oars.svg"

  blank plank {
    of walnut-12
    size 160 x 120 mm
    ${p.grain}
    ${p.touched}
  }
  blank leaf {
    of maple-06
    size 90 x 80 mm
    grain along width
    ${p.backing}
  }

  engrave pocket on plank {
    art ${p.art}${p.at}
    depth ${p.depth}
${settled(p.set)}
    ${p.pocketOffset === undefined ? '' : `offset ${p.pocketOffset}`}
    ${p.scan}
    ${p.air}
  }
  engrave relief on leaf {
    art ${p.other === 'same' ? p.art : p.other}${p.inverse}
    ${p.mirror}
    depth through
    ${p.reliefOffset === undefined ? '' : `offset ${p.reliefOffset}`}
${settled(p.reliefSet)}
    scan across grain
    air off
  }
  ${p.seal}
  ${p.check === undefined ? '' : `check pocket { depth ${p.check} mm +- 0.05 mm }`}
  inlay relief into pocket {
    ${p.clearance === undefined ? '' : `clearance ${p.clearance}`}
    glue wood-glue
    ${p.marks === undefined ? '' : `marks ${p.marks}`}
  }
  ${p.wait === undefined ? '' : `wait ${p.wait} h`}
  ${p.peel ? 'peel leaf' : ''}
  ${p.finishFirst ? 'finish plank with oil-varnish' : ''}
  sand plank {
    ${p.flush ? (p.take === undefined ? 'flush' : `flush then ${p.take}`) : p.take === undefined ? '' : `take ${p.take}`}
    grits ${p.grits}
  }
  ${p.finishFirst ? '' : 'finish plank with oil-varnish'}
}
`,
    );

const fills = fc
    .record({
        art: fc.constantFrom('oars', 'ropes', 'buoy'),
        sheet: fc.constantFrom('oak-9', 'walnut-12'),
        want: fc.oneof(
            length(0.1, 2).map((d) => `depth ${d}`),
            length(2, 10).map((d) => `depth ${d}`),
            fc.constant('tone 60 %'),
            fc.constant('depth through'),
        ),
        set: settings,
        offset: maybe(length(-0.1, 0.3)),
        seal: fc.constantFrom('before', 'before', 'after', 'none'),
        sealWait: maybe(fc.integer({ min: 1, max: 6 })),
        wait: maybe(fc.integer({ min: 1, max: 40 })),
        take: maybe(length(0.01, 1.5)),
        flush: fc.boolean(),
        at: fc.constantFrom(' at 45, 30 mm', ' at 45, 30 mm', ' at 80, 30 mm', ''),
        layers: fc.integer({ min: 1, max: 3 }),
        between: maybe(fc.integer({ min: 1, max: 60 })),
        mask: fc.boolean(),
        finishFirst: fc.boolean(),
        touched: fc.constantFrom('', '', 'touched by food', 'touched by hands'),
        cut: fc.constantFrom(
            '',
            '',
            'cut rim on tag { rectangle 84 x 54 mm air off }',
            'cut rim on tag { rectangle 84 x 54 mm }',
        ),
        lateBadge: fc.constantFrom('', '', 'engrave badge on tag { circle 8 mm at 10, 10 mm  tone 50 %  air off }'),
        grits: fc.constantFrom('100, 150, 220', '60, 240', '240, 120', '80, 400'),
        check: maybe(fc.integer({ min: 10, max: 150 })),
    })
    .map((p) => {
        const seal = `seal tag with shellac {\n    coats 2\n  }\n  ${p.sealWait === undefined ? '' : `wait ${p.sealWait} h`}`;
        const fill = Array<string>(p.layers)
            .fill('fill hollow with harbour-blue')
            .join(`\n  ${p.between === undefined ? '' : `wait ${p.between} h\n  `}`);
        return `${stock}
recipe oar-tag "Oar tag" {
  revision 1
  make 6
  laser slip
  art oars "oars.svg"
  art ropes "ropes.svg"
  art buoy "buoy.svg"

  blank tag {
    of ${p.sheet}
    size 90 x 60 mm
    grain along width
    ${p.touched}
  }
  ${p.mask ? 'mask tag' : ''}
  engrave hollow on tag {
    art ${p.art}${p.at}
    ${p.want}
${settled(p.set)}
    ${p.offset === undefined ? '' : `offset ${p.offset}`}
    scan across grain
    air off
  }
  ${p.cut}
  ${p.seal === 'before' ? seal : ''}
  ${p.check === undefined ? '' : `check hollow { depth ${p.check / 100} mm +- 0.05 mm }`}
  ${fill}
  ${p.seal === 'after' ? seal : ''}
  ${p.lateBadge}
  ${p.wait === undefined ? '' : `wait ${p.wait} h`}
  ${p.finishFirst ? 'finish tag with oil-varnish' : ''}
  sand tag {
    ${p.flush ? (p.take === undefined ? 'flush' : `flush then ${p.take}`) : p.take === undefined ? '' : `take ${p.take}`}
    grits ${p.grits}
  }
  ${p.finishFirst ? '' : 'finish tag with oil-varnish'}
}
`;
    });

/** Inlaid and filled recipes with slips in nearly every place: units, figures, the order of the work, what is left out. */
export const slippedRecipes = fc.oneof(halves, fills);
