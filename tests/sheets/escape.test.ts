import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cssText, escapeMarkup, fileName } from '../../shared/sheets/escape';

describe('names and texts from a recipe', () => {
    it('cannot break out of markup', () => {
        expect(escapeMarkup('<b a="1">&\'</b>')).toBe('&#60;b a=&#34;1&#34;&#62;&#38;&#39;&#60;/b&#62;');
        expect(escapeMarkup('a\u0000b\u001bc\td')).toBe('a b c\td');
        expect(escapeMarkup('a\ud800b\uffffc\udc00\u{1f426}')).toBe('a b c \u{1f426}');
        expect(escapeMarkup('Möwe – 渡り鳥')).toBe('Möwe – 渡り鳥');
    });
    it('make safe file names, whatever they are', () => {
        fc.assert(fc.property(fc.string(), (text) => /^[A-Za-z0-9_-]{1,80}$/.test(fileName(text))));
        expect(fileName('../../etc')).toBe('etc');
        expect(fileName('..')).toBe('unnamed');
    });
});

it('a text in a style sheet can end neither the string nor the element', () => {
    expect(cssText('Heron tray, revision 3')).toBe('"Heron tray, revision 3"');
    expect(cssText('a"}</style>\n\\')).toBe('"a\\22 \\7d \\3c \\2f style\\3e \\a \\5c "');
    expect(cssText('Ebbe über 水位')).toBe('"Ebbe über 水位"');
});
