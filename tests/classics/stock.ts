import { encode } from 'fast-png';
import { coupon } from '../kit/shop';

/** Drawn for these tests: a rope's cleat without any symmetry, a ring buoy, a pair of oars, ropes from a bollard, and a picture of the full moon. */
export const drawings: Readonly<Record<string, string | Uint8Array>> = {
    'cleat.svg': `<svg xmlns="http://www.w3.org/2000/svg" width="34mm" height="30mm" viewBox="0 0 34 30">
  <path d="M4 4h5v14h13l-5-6h8l6 8-3 6H4z"/></svg>`,
    'buoy.svg': `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm" viewBox="0 0 30 30">
  <circle cx="15" cy="15" r="13"/></svg>`,
    'oars.svg': `<svg xmlns="http://www.w3.org/2000/svg" width="36mm" height="24mm" viewBox="0 0 36 24">
  <path d="M2 3h22l4-2 6 3-6 4-4-2H2z"/><path d="M2 15h14v-3l16 4-9 7-7-3H2z"/></svg>`,
    'keel.svg': `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="20mm" viewBox="0 0 120 20">
  <path d="M2 4h110l6 6-10 7H20z"/></svg>`,
    'ropes.svg': `<svg xmlns="http://www.w3.org/2000/svg" width="36mm" height="24mm" viewBox="0 0 36 24">
  <path d="M2 3h10v18h-10z"/><path d="M14 5h18v0.3h-18z"/><path d="M14 10h18v0.3h-18z"/><path d="M14 15h18v0.3h-18z"/><path d="M14 19h18v0.3h-18z"/></svg>`,
    'moon.png': moon(240),
};

/** A dark disc on white. */
function moon(size: number): Uint8Array {
    const data = Uint8Array.from({ length: size * size }, (_, i) => {
        const [x, y] = [(i % size) - size / 2, Math.floor(i / size) - size / 2];
        return Math.hypot(x, y) < size * 0.45 ? 30 : 255;
    });
    return encode({ width: size, height: size, data, channels: 1 });
}

/** A square for depths that the usual ones do not reach. */
const deeper = '  burn 80 % at 300 mm/s x 4 gives 1.33 mm\n';

/** What the recipes here are made of. Every board has a coupon, so that no depth is a guess. */
export const stock = `
laser slip { beam co2  power 45 W  spot 0.15 mm  focus driven  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
board walnut-12 { wood black-walnut  thickness 12 mm +- 0.3 mm  moisture 8 % }
board oak-9 { wood white-oak  thickness 9 mm +- 0.2 mm  moisture 8 % }
veneer maple-06 { wood sugar-maple  thickness 0.6 mm +- 0.02 mm  moisture 8 % }
${['walnut-12', 'oak-9', 'maple-06'].map((sheet) => coupon(sheet, 'slip', deeper)).join('\n')}
resin harbour-blue { kind slow-epoxy  mix 2 : 1 by volume  colour #2f7fb0 }
`;
