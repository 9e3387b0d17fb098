/** For gloved hands at arm's length: what is touched is at least 56 px high (WCAG 2.2 asks for 24, its level AAA for 44). */
export const tabletStyle = `
:root { --paper: #fbf8f2; --ink: #1c1712; --soft: #5c5145; --line: #b9ab98; --done: #e6efe0; --warn: #7a2e00; --go: #1f4f2b; --go-ink: #fff }
@media (prefers-color-scheme: dark) { :root { --paper: #191512; --ink: #f3ece2; --soft: #c9bba9; --line: #5d5146; --done: #1f2b1c; --warn: #ffb48a; --go: #a9dcb0; --go-ink: #10210f } }
* { box-sizing: border-box }
body { margin: 0; font: 18px/1.4 system-ui, sans-serif; color: var(--ink); background: var(--paper); padding-bottom: 96px }
header, main { max-width: 860px; margin: 0 auto; padding: 12px 16px } h1 { font-size: 26px; margin: 0 } h2 { font-size: 20px; margin: 16px 0 8px } header p { margin: 0; color: var(--soft) }
ol { list-style: none; margin: 0; padding: 0 } ol > li { border: 2px solid var(--line); border-radius: 12px; margin: 12px 0; padding: 4px 12px 10px; overflow-wrap: anywhere }
ol > li.done { background: var(--done) } ol > li.over { border-color: var(--warn) }
.tick { display: flex; align-items: center; gap: 14px; min-height: 64px; font-weight: 600; font-size: 20px; cursor: pointer } .tick input { width: 40px; height: 40px; flex: none; accent-color: var(--go) }
.mirrored { color: var(--warn); letter-spacing: 0.06em }
.about { font-style: italic; margin: 0 0 6px } dl { margin: 0; display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: 2px 14px } dt { color: var(--soft) } dd { margin: 0 }
.clock { font-size: 24px; font-variant-numeric: tabular-nums; margin: 8px 0 } .over .clock { color: var(--warn); font-weight: 700 }
.figure, .wide { display: block; margin: 10px 0 } .figure span { display: block; white-space: nowrap; margin-top: 4px } .remark:not(:empty) { display: block; color: var(--warn); font-weight: 600; white-space: normal }
.figure input, .figure select, .wide input, textarea { font: inherit; color: inherit; background: transparent; border: 2px solid var(--line); border-radius: 8px; min-height: 56px; padding: 6px 12px } .figure input { width: 8em } .figure select { background: var(--paper); display: block; margin-top: 4px } .wide input, textarea { display: block; width: 100%; margin-top: 4px }
summary { min-height: 56px; display: flex; align-items: center; cursor: pointer; color: var(--soft) } summary::before { content: '▸'; margin-right: 10px } details[open] > summary::before { content: '▾' }
.cautions { border-left: 6px solid var(--warn); padding-left: 14px } .cautions ul { margin: 0; padding-left: 20px }
footer { position: fixed; inset: auto 0 0 0; display: flex; gap: 10px; align-items: center; padding: 8px 12px; background: var(--paper); border-top: 2px solid var(--line); flex-wrap: wrap } #done { flex: 1 1 6em }
button { font: inherit; font-weight: 600; min-height: 56px; padding: 0 14px; border-radius: 10px; border: 2px solid var(--go); background: var(--go); color: var(--go-ink) } button#again { background: transparent; color: var(--ink); border-color: var(--line) }
:focus-visible { outline: 4px solid var(--warn); outline-offset: 2px }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); margin: 0 }
@media print { footer, .notes { display: none } body { padding: 0 } }
`;
