import { beforeAll, describe, expect, it } from 'vitest';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import { area } from '../../shared/geometry/measure';
import { areaDifference, compare, witness } from './witness';

beforeAll(witness);

const svg = (content: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${content}</svg>`;
const circle = '<circle cx="50" cy="50" r="30" fill="white"/>';
const square = (mask = 'mask="url(#m)"') => `<rect x="10" y="10" width="80" height="80" ${mask}/>`;

/** Masks on a black square of 80 mm, and the area in mm2 that is left of it. */
const masks: Readonly<Record<string, readonly [content: string, left: number]>> = {
    'white shows': [`<mask id="m">${circle}</mask>${square()}`, Math.PI * 900],
    'black does not': [
        `<mask id="m"><rect width="100" height="100" fill="#fff"/><circle cx="50" cy="50" r="30"/></mask>${square()}`,
        6400 - Math.PI * 900,
    ],
    'nothing does not': [`<mask id="m"/>${square()}`, 0],
    'grey lets through in part': [`<mask id="m"><rect width="50" height="100" fill="#666"/></mask>${square()}`, 0],
    'grey lets through enough': [`<mask id="m"><rect width="50" height="100" fill="#aaa"/></mask>${square()}`, 3200],
    'translucent white is grey': [
        `<mask id="m"><rect width="50" height="100" fill="#fff" fill-opacity=".7"/></mask>${square()}`,
        3200,
    ],
    'by alpha, black shows': [`<mask id="m" mask-type="alpha"><circle cx="50" cy="50" r="30"/></mask>${square()}`, Math.PI * 900],
    'by alpha, in a style': [
        `<mask id="m" style="mask-type:alpha"><circle cx="50" cy="50" r="30"/></mask>${square()}`,
        Math.PI * 900,
    ],
    'content in units of the box': [
        `<mask id="m" maskContentUnits="objectBoundingBox"><rect width=".5" height=".25" fill="#fff"/></mask>${square()}`,
        800,
    ],
    'a window in units of the drawing': [
        `<mask id="m" maskUnits="userSpaceOnUse" x="0" y="0" width="30" height="100">${circle}<rect width="100" height="100" fill="#fff"/></mask>${square()}`,
        1600,
    ],
    'a window in units of the box': [
        `<mask id="m" x="0" y="0" width=".5" height=".5"><rect width="100" height="100" fill="#fff"/></mask>${square()}`,
        1600,
    ],
    'of a group, turned': [
        `<mask id="m">${circle}</mask><g mask="url(#m)" transform="rotate(45 50 50)">${square('')}</g>`,
        Math.PI * 900,
    ],
    'masked itself': [
        `<mask id="n"><rect width="50" height="100" fill="#fff"/></mask><mask id="m" ><g mask="url(#n)">${circle}</g></mask>${square()}`,
        Math.PI * 450,
    ],
    'a gradient of one colour': [
        `<linearGradient id="g"><stop stop-color="#fff"/><stop offset="1" stop-color="#fff"/></linearGradient><mask id="m"><rect width="50" height="100" fill="url(#g)"/></mask>${square()}`,
        3200,
    ],
};

describe('masks', () => {
    for (const [name, [content, left]] of Object.entries(masks)) {
        it(name, () => {
            const art = readSvg(svg(content));
            expect(art.problems).toEqual(left === 0 && art.parts.length === 0 ? art.problems : []);
            expect(area(painted(art, []))).toBeCloseTo(left, left > 0 ? -1 : 6);
            // The witness reads mask-type as an attribute only.
            if (!content.includes('style=')) expect(areaDifference(compare(svg(content), 800))).toBeLessThan(0.005);
        });
    }
    it('by itself, or by what is not there, are said and drawn without', () => {
        const itself = readSvg(svg(`<mask id="m"><g mask="url(#m)">${circle}</g></mask>${square()}`));
        expect(itself.problems.map(({ kind, subject }) => `${kind} ${subject}`)).toContain('refused mask');
        const missing = readSvg(svg(square('mask="url(#none)"')));
        expect(area(painted(missing, []))).toBeCloseTo(6400, 6);
        expect(missing.problems.map(({ subject }) => subject)).toContain('mask');
    });
});
