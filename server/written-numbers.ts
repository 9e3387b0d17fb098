import type { Where } from '../shared/quantity/where';
import type { BenchView } from '../shared/view/bench-view';

const number = /^[\d./]/;

/** The view with the numbers of its own file as they stand in the text, so that they can be typed over. */
export function withWrittenNumbers(view: BenchView, text: string): BenchView {
    const at = (where: Where | undefined): string | undefined => {
        if (where === undefined || where.uri !== view.uri) return undefined;
        const words = text.slice(where.offset, where.offset + where.length);
        return number.test(words) ? words : undefined;
    };
    return {
        ...view,
        blanks: view.blanks.map(({ size, ...blank }) => {
            const written = at(size?.where);
            return size === undefined || written === undefined ? blank : { ...blank, size: { ...size, text: written } };
        }),
        steps: view.steps.map((step) => ({
            ...step,
            facts: step.facts.map((fact) => {
                const written = at(fact.where);
                return written === undefined ? fact : { ...fact, written };
            }),
        })),
    };
}
