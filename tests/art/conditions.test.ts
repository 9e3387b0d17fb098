import { describe, expect, it } from 'vitest';
import { conditionsHold } from '../../shared/art/draw/conditions';
import type { SvgElement } from '../../shared/art/xml/tree';

const under = (attributes: Record<string, string>) =>
    conditionsHold({ name: 'rect', attributes, children: [] } as unknown as SvgElement);

/** SVG 2, section 5.10.5: a tag counts where it is the reader's language, or begins with it and a hyphen (from memory). */
describe('the conditions of an element', () => {
    it.each(['en', 'EN', 'en-GB', 'fr, en-US', ' en ,de'])('hold for %j', (systemLanguage) =>
        expect(under({ systemLanguage })).toBe(true),
    );
    it.each(['fr', 'eng', 'x-en', 'gen-', 'de,fr', ''])('do not hold for %j', (systemLanguage) =>
        expect(under({ systemLanguage })).toBe(false),
    );
    it('hold where nothing is asked, and for features, which all are there; for extensions never', () => {
        expect([under({}), under({ requiredFeatures: 'x' }), under({ requiredExtensions: '' })]).toEqual([true, true, false]);
    });
});
