import { expect, test } from 'vitest';
import { readFromBench } from '../../extension/bench/messages';
import { savedPage } from '../../extension/bench/saved-page';

const html = savedPage('Tray & <b>lid</b>', '<p>body</p>', '.a { color: red } /* </style><script>x</script> */');

test('a saved page fetches and runs nothing', () => {
    const policy = /Content-Security-Policy" content="([^"]+)"/.exec(html)![1]!;
    expect(policy.split('; ').sort()).toEqual([
        "base-uri 'none'",
        "default-src 'none'",
        "form-action 'none'",
        'img-src data:',
        "style-src 'unsafe-inline'",
    ]);
    expect(html).not.toMatch(/<link|src="http/);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
});

test('its title is text', () => {
    expect(html).toContain('<title>Tray &amp; &lt;b>lid&lt;/b></title>');
});

test('markup with a script in it is not taken', () => {
    const message = { type: 'save-page', name: 'tray', body: '<p>x</p>' };
    expect(readFromBench(message)).toEqual(message);
    expect(readFromBench({ ...message, body: '<SCRIPT>' })).toBeUndefined();
    expect(readFromBench({ ...message, name: '../x' })).toBeUndefined();
});
