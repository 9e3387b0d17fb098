import type { BenchView } from '../../../shared/view/bench-view';

/** The picture of a text that is no more: to be looked at, but nothing in it can be written into the text of now. */
export function lookOnly(view: BenchView): BenchView {
    return {
        ...view,
        blanks: view.blanks.map(({ size: _size, ...blank }) => blank),
        steps: view.steps.map(({ movable: _movable, ...step }) => ({
            ...step,
            facts: step.facts.map(({ written: _written, ...fact }) => fact),
        })),
    };
}
