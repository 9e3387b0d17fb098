import type { KerfWidth } from '../burn/kerf-width';
import type { Interval } from '../quantity/interval';
import { isLopsided } from '../quantity/interval';
import { showLength, showLengthInterval } from '../quantity/show';
import type { LaserPlan } from './laser-plan';

const basisWords = { written: 'as written', measured: 'as measured', guess: 'a guess: no kerf was measured' } as const;

/** How wide a cut is and how its line lies beside the drawn edge, as a sentence; undefined for what is no cut. */
export function kerfWords({ kerf, cutLine, fits }: LaserPlan): string | undefined {
    if (kerf === undefined) return undefined;
    const { face, back, basis } = kerf;
    const width = `${showWidth(face)} on the face, ${showLength(back.value)} on the back (${basisWords[basis]})`;
    const beside =
        cutLine === undefined
            ? `the beam follows the drawn line, so parts come out ${showLength(face.value)} smaller and openings larger`
            : `the beam runs ${showLength(cutLine.shift)} beside the line, in the waste`;
    return [width, beside, ...(fits === undefined ? [] : [fitsWords(kerf, fits)])].join('; ');
}

/** What a clearance ladder says beside the kerf. */
function fitsWords({ face, back }: KerfWidth, fits: number): string {
    const tighter = (face.value + back.value) / 2 - fits;
    if (Math.abs(tighter) < FELT) return 'the clearance ladder says the same';
    return `by the clearance ladder an edge is ${showLength(Math.abs(tighter) / 2)} ${tighter > 0 ? 'tighter' : 'looser'} than that`;
}

/** Nobody feels less than this, mm. @commonPractice */
const FELT = 0.005;

function showWidth(face: Interval): string {
    return isLopsided(face)
        ? `${showLength(face.value)} (${showLength(face.low)} to ${showLength(face.high)})`
        : showLengthInterval(face);
}

/** The same for the head of a file, in few words; empty where the beam follows what is drawn. */
export function besideWords({ kerf, cutLine }: LaserPlan): string {
    if (kerf === undefined || cutLine === undefined) return '';
    return `, ${showLength(cutLine.shift)} beside the line for a kerf of ${showLength(kerf.face.value)}`;
}
