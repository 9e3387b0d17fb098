import type { Where } from '../shared/quantity/where';
import type { SentPicture } from '../shared/view/sent-picture';

const number = /^[\d./]/;

/**
 * The view with the numbers of its own recipe as they stand in the text, so that they can be typed over and
 * dragged. What a variant takes over from its base stays as it is: other variants stand on it too.
 */
export function withWrittenNumbers(view: SentPicture, text: string, whole: Where): SentPicture {
    const isOwn = ({ uri, offset, length }: Where): boolean =>
        uri === view.uri && uri === whole.uri && whole.offset <= offset && offset + length <= whole.offset + whole.length;
    const at = (where: Where | undefined): string | undefined => {
        if (where === undefined || !isOwn(where)) return undefined;
        const words = text.slice(where.offset, where.offset + where.length);
        return number.test(words) ? words : undefined;
    };
    return {
        ...view,
        blanks: view.blanks.map(({ size, ...blank }) => {
            const written = at(size?.where);
            return size === undefined || written === undefined ? blank : { ...blank, size: { ...size, text: written } };
        }),
        steps: view.steps.map(({ movable, ...step }) => ({
            ...step,
            ...(movable !== undefined && isOwn(movable.where) && { movable }),
            facts: step.facts.map((fact) => {
                const written = at(fact.where);
                return written === undefined ? fact : { ...fact, written };
            }),
        })),
    };
}
