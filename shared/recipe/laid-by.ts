import type { Step } from './step';
import type { Coat, Glue, Resin, Sealer } from './stock';

/** What a step brushes or sprays on a face: of a seal its sealer, of a finish its coat. Undefined for any other step, and where it has no name. */
export function coatOf(step: Step | undefined): Sealer | Coat | undefined {
    if (step?.kind === 'seal') return step.sealer;
    return step?.kind === 'finish' ? step.coat : undefined;
}

/** What a step lays on a face, coats, resin and glue alike; undefined where it lays nothing, or nothing that has a name. */
export function laidBy(step: Step | undefined): Sealer | Coat | Resin | Glue | undefined {
    if (step?.kind === 'fill') return step.resin;
    return step?.kind === 'inlay' ? step.glue : coatOf(step);
}
