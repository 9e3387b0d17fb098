import { outputs, zeros } from '../../shared/recipe/stock';
import { measure, property, share } from './property';

/** What a shop says of a laser. */
export const laserProperties = [
    property(
        'Laser',
        'serviced',
        'day',
        'The day on which lens, mirrors or source were changed or cleaned: coupons from before it are stale.',
        'serviced 2026-06-01 "new lens"',
        { many: true, otherwise: 'none' },
    ),
    property('Laser', 'beam', 'name', 'The kind of source, and its wavelength where it differs.', 'beam co2 10.6 um', {
        node: 'LaserBeam',
        follows: 'the name of a beam',
        otherwise: 'needed',
    }),
    property('Laser', 'power', 'figure', 'Power at the wood when set to 100 %.', 'power 45 W', {
        measures: [measure('power', [0.5, 500])],
        otherwise: 'needed',
    }),
    property('Laser', 'least power', 'figure', 'The least power at which it still burns.', 'least power 8 %', {
        measures: [share(), measure('power', [0.05, 100])],
        otherwise: 'none',
    }),
    property(
        'Laser',
        'set',
        'phrase',
        'One measured place of the power curve, for a laser whose power does not go with its setting.',
        'set 20 % gives 6 W',
        { many: true, node: 'Setpoint', otherwise: 'power goes with its setting' },
    ),
    property('Laser', 'top speed', 'figure', 'The fastest the head moves while it burns.', 'top speed 600 mm/s', {
        measures: [measure('speed', [5, 5000])],
        otherwise: '300 mm/s',
    }),
    property('Laser', 'acceleration', 'figure', 'How hard the head speeds up and brakes.', 'acceleration 6000 mm/s2', {
        measures: [measure('acceleration', [50, 1e5])],
        otherwise: '3000 mm/s2',
    }),
    property('Laser', 'overtravel', 'figure', 'How far the head runs past each scan line to turn.', 'overtravel 3 mm', {
        measures: [measure('length', [0, 100])],
        otherwise: 'what its acceleration needs',
    }),
    property('Laser', 'spot', 'figure', 'Diameter of the spot in focus.', 'spot 0.15 mm', {
        measures: [measure('length', [5e-3, 2])],
        otherwise: 'by lens, aperture and quality',
    }),
    property('Laser', 'lens', 'figure', 'Focal length of the lens.', 'lens 50.8 mm', {
        measures: [measure('length', [5, 600])],
        otherwise: 'none',
    }),
    property('Laser', 'aperture', 'figure', 'Diameter of the beam where it meets the lens.', 'aperture 7 mm', {
        measures: [measure('length', [0.5, 60])],
        otherwise: 'none',
    }),
    property('Laser', 'quality', 'figure', 'Beam quality M2: 1 is the best there can be.', 'quality 1.2', {
        measures: [measure('count', [1, 50], [1, 1e4])],
        otherwise: 'by spot, lens and aperture, or usual for its beam',
    }),
    property(
        'Laser',
        'focus',
        'word',
        'What lowers the focus as a pocket gets deeper: the machine by itself, a person while it stops, or nothing.',
        'focus driven',
        { choices: ['driven', 'by-hand', 'fixed'], otherwise: 'not known: both are planned' },
    ),
    property(
        'Laser',
        'output',
        'word',
        'What the power does where the head is slower than its setting, in corners and at the ends of lines: it stays, or the machine lowers it with the speed, so that all places get the same dose. Machine files then switch on with M4 instead of M3.',
        'output with-speed',
        { choices: [...outputs], otherwise: 'constant' },
    ),
    property('Laser', 'full output', 'figure', 'The S of machine files that stands for full power.', 'full output 255', {
        measures: [measure('count', [50, 1e5], [1, 1e6])],
        otherwise: '1000',
    }),
    property(
        'Laser',
        'zero',
        'word',
        'Where X 0 Y 0 of the machine files lies on the blank: one of its corners as it lies on the machine, lower is towards you, or its middle. The lower left corner when it is not written.',
        'zero lower-left',
        { choices: [...zeros], otherwise: 'lower-left' },
    ),
    property('Laser', 'field', 'size', 'Width and depth that the head can reach.', 'field 600 x 400 mm', {
        measures: [measure('length', [50, 4000])],
        otherwise: 'none',
    }),
];
