import type { Interval } from '../quantity/interval';
import { isLopsided } from '../quantity/interval';
import { showLength, showLengthInterval } from '../quantity/show';
import type { LaserPlan } from './laser-plan';

const basisWords = { written: 'as written', measured: 'as measured', guess: 'a guess: no kerf was measured' } as const;

/** How wide a cut is and how its line lies beside the drawn edge, as a sentence; undefined for what is no cut. */
export function kerfWords({ kerf, cutLine }: LaserPlan): string | undefined {
    if (kerf === undefined) return undefined;
    const { face, back, basis } = kerf;
    const width = `${showWidth(face)} on the face, ${showLength(back.value)} on the back (${basisWords[basis]})`;
    if (cutLine === undefined)
        return `${width}; the beam follows the drawn line, so parts come out ${showLength(face.value)} smaller and openings larger`;
    return `${width}; the beam runs ${showLength(cutLine.shift)} beside the line, in the waste`;
}

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
