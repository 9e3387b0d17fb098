import { showNumber } from '../../shared/quantity/show';

/** Blocks of stock for a shop that has written none yet. Their figures are usual ones and say so. @commonPractice */

/** mm */
const usualBoard = 6;
const usualVeneer = 0.6;
/** As indoors. */
const usualMoisture = 0.08;

/** Text of a sheet, and what it says. Lengths in mm. */
interface NewSheet {
    readonly name: string;
    readonly text: string;
    readonly thickness: { readonly value: number; readonly tolerance: number };
    /** A part of the dry mass. */
    readonly moisture: number;
}

export function newBoard(wood: string): NewSheet {
    return sheet('board', `${wood}-${usualBoard}`, wood, { value: usualBoard, tolerance: 0.3 }, usualMoisture);
}

/** @param moisture what the veneer is to be stored to, since a board and a veneer are glued at the same */
export function newVeneer(wood: string, moisture = usualMoisture): NewSheet {
    const name = `${wood}-${showNumber(usualVeneer).replace('.', '')}`;
    return sheet('veneer', name, wood, { value: usualVeneer, tolerance: 0.05 }, moisture);
}

function sheet(
    kind: 'board' | 'veneer',
    name: string,
    wood: string,
    { value, tolerance }: NewSheet['thickness'],
    moisture: number,
): NewSheet {
    const text = `// Measure your own ${kind} with a caliper and write its figures here.
${kind} ${name} {
  wood ${wood}
  thickness ${value} mm +- ${tolerance} mm
  moisture ${showNumber(moisture * 100, 1)} %
}`;
    return { name, text, thickness: { value, tolerance }, moisture };
}

/** mm: what a bench machine reaches. */
export const usualField = { width: 400, height: 300 };

/** @param micrometres wavelength; a short one is a diode's */
export function newLaser(beam: string, micrometres: number): { name: string; text: string } {
    const name = `${beam}-laser`;
    const diode = micrometres < 0.7;
    return {
        name,
        text: `// The figures of a usual machine. Before anything is burnt, write those of your own machine's manual here.
laser ${name} {
  beam ${beam}
  power ${diode ? 10 : 40} W
  spot ${diode ? 0.08 : 0.15} mm
  field ${usualField.width} x ${usualField.height} mm
  top speed ${diode ? 200 : 400} mm/s
  acceleration ${diode ? 2000 : 5000} mm/s2
}`,
    };
}
