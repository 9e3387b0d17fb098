import { expect, it } from 'vitest';
import { colours, swatchOf } from '../../extension/starting/colours';
import { spokenName } from '../../extension/starting/spoken-name';

it('a name is offered from the art’s file', () => {
    expect(spokenName('file:///shop/art/tide-rings.svg')).toBe('Tide rings');
    expect(spokenName('art/sl%C3%A4ck__water.png')).toBe('Släck water');
    expect(spokenName('')).toBe('');
});

it('a colour has a swatch, and what is none gets nothing into it', () => {
    for (const { colour } of colours) expect(atob(swatchOf({ colour }).split(',')[1]!)).toContain(`fill="${colour}"`);
    expect(atob(swatchOf({ colour: '"/><script>' }).split(',')[1]!)).toContain('fill="none"');
});
