import type { Problems } from '../problems';
import type { SvgElement } from '../xml/tree';
import type { Cascade } from './cascade';
import { computeStyle } from './computed';
import { initialStyle, type Style } from './properties';

/**
 * What an element takes over where it stands in the file: clip paths, markers and gradients take
 * it from there, not from what refers to them.
 */
export class InheritedStyles {
    private readonly known = new Map<SvgElement, Style>();

    constructor(
        private readonly cascade: Cascade,
        private readonly problems: Problems,
        private readonly viewport: { readonly width: number; readonly height: number; readonly rootFontSize: number },
    ) {}

    around(element: SvgElement): Style {
        const { parent } = element;
        if (parent === undefined) return initialStyle;
        const known = this.known.get(parent);
        if (known !== undefined) return known;
        const { style } = computeStyle(parent, this.around(parent), this.cascade, this.viewport, this.problems);
        this.known.set(parent, style);
        return style;
    }
}
