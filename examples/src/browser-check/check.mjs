// Looks at one HTML page as its readers do: counts requests, runs axe, prints to PDF, takes screenshots.
//
//   NODE_PATH=<folder with playwright-core and axe-core> node check.mjs PAGE.html FOLDER
//
// CHROMIUM names the browser (default: chromium). Exit 1 if the page asks for anything, runs a script, is wider than its
// window, has a serious or critical violation, has something that axe can't decide and nothing else covers, has text below 8 pt
// on paper, or needs more than two A4 or Letter sheets, or than two that are 10 mm shorter.
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { execFileSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const require = createRequire(import.meta.url);
const { chromium } = require('playwright-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

const [file, folder] = process.argv.slice(2);
if (!file || !folder) {
  console.error('usage: node check.mjs PAGE.html FOLDER');
  process.exit(2);
}
mkdirSync(folder, { recursive: true });
const wanted = process.env.CHROMIUM ?? 'chromium';
const executablePath = wanted.includes('/') ? wanted
    : execFileSync('sh', ['-c', 'command -v "$1"', 'sh', wanted]).toString().trim();
const browser = await chromium.launch({
  executablePath,
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
    '--disable-component-update', '--disable-sync'],
});
const address = pathToFileURL(resolve(file)).href;
let failed = false;
const say = (good, text) => {
  failed ||= !good;
  console.log((good ? 'ok    ' : 'FAIL  ') + text);
};

// What axe can't decide by itself, and who does. Of colour contrast it can't see what lies behind the text of an SVG: the
// unit test PictureTest computes the contrast of every colour of pictures, in light and dark. Nor can it see a cell of a wide
// table that is scrolled out of a narrow window: it has the colours of the cells beside it, and axe decides it in the wide
// window, where no such excuse holds. Anything else is not excused.
const COVERED = { 'color-contrast': (where) => where === 'svg' || where === 'scrolled' };

const requests = [];
const problems = [];
async function open(width, colorScheme, reducedHeight = 900) {
  // The policy of the page forbids scripts, so axe needs the bypass; the page itself is read without scripts below.
  const context = await browser.newContext({ viewport: { width, height: reducedHeight }, colorScheme, bypassCSP: true });
  const page = await context.newPage();
  page.on('request', (request) => { if (request.url() !== address) requests.push(request.url()); });
  page.on('console', (message) => { if (message.type() === 'error') problems.push(message.text()); });
  page.on('dialog', (dialog) => { problems.push('dialog ' + dialog.message()); dialog.dismiss(); });
  await page.goto(address);
  return page;
}

for (const colorScheme of ['light', 'dark']) {
  for (const width of [360, 1280]) {
    const page = await open(width, colorScheme);
    const name = `${width}-${colorScheme}`;
    await page.screenshot({ path: join(folder, name + '.png'), fullPage: true });
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    say(wide <= 0, `${name}: overflows its window by ${Math.max(0, wide)} px`);
    const smallest = await page.evaluate(() => {
      const sizes = [...document.querySelectorAll('svg text')].filter((t) => t.textContent.trim()).map((t) => {
        const svg = t.ownerSVGElement;
        return parseFloat(getComputedStyle(t).fontSize) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
      });
      return sizes.length ? Math.min(...sizes) : null;
    });
    if (smallest !== null) say(smallest >= 9, `${name}: smallest text of a picture ${smallest.toFixed(1)} px`);
    const clipped = await page.evaluate(() => [...document.querySelectorAll('svg text')].filter((t) => {
      const box = t.getBBox();
      const view = t.ownerSVGElement.viewBox.baseVal;
      return !t.hasAttribute('transform') && t.textContent.trim()
          && (box.x < -0.5 || box.x + box.width > view.width + 0.5);
    }).map((t) => t.textContent));
    say(clipped.length === 0, `${name}: texts of pictures cut off: ${JSON.stringify(clipped)}`);
    await page.evaluate(axe);
    const result = await page.evaluate(() => window.axe.run());
    const bad = result.violations.filter((v) => v.impact === 'serious' || v.impact === 'critical');
    const selectors = result.incomplete.map((v) => v.nodes.map((n) => n.target[n.target.length - 1]));
    const where = await page.evaluate((all) => all.map((rule) => rule.map((selector) => {
      const element = document.querySelector(selector);
      if (element === null) return 'unknown';
      if (element.closest('svg')) return 'svg';
      const region = element.closest('.scroll');
      return region && element.getBoundingClientRect().right > region.getBoundingClientRect().right ? 'scrolled' : 'text';
    })), selectors);
    const covered = { svg: 0, scrolled: 0 };
    const undecided = [];
    result.incomplete.forEach((v, i) => v.nodes.forEach((n, j) => {
      if (COVERED[v.id]?.(where[i][j])) {
        covered[where[i][j]]++;
      } else if (v.impact === 'serious' || v.impact === 'critical') {
        undecided.push(`${v.id}: ${v.help}: ${n.target}`);
      }
    }));
    say(bad.length === 0, `${name}: axe passes ${result.passes.length} rules, violations ${result.violations.length}`);
    say(undecided.length === 0, `${name}: axe can't decide the contrast of ${covered.svg} texts of pictures, which PictureTest`
        + ` computes, and of ${covered.scrolled} cells scrolled out of view; left open: ${undecided.length}`);
    undecided.slice(0, 5).forEach((text) => console.log('      ' + text));
    for (const v of result.violations) {
      console.log(`      ${v.impact} ${v.id}: ${v.help} (${v.nodes.length}) ${v.nodes[0].target}`);
    }
    await page.context().close();
  }
}

const paper = await open(1280, 'dark');
for (const format of ['A4', 'Letter']) {
  const pdf = await paper.pdf({ path: join(folder, format + '.pdf'), format, preferCSSPageSize: false, printBackground: true });
  const sheets = (pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g) ?? []).length;
  say(sheets >= 1 && sheets <= 2, `${format}: ${sheets} sheets`);
}
// Another font or one more warning must not need a third sheet: two that are 10 mm shorter each are enough.
for (const [format, width, height] of [['A4', 210, 297], ['Letter', 215.9, 279.4]]) {
  const pdf = await paper.pdf({ width: `${width}mm`, height: `${height - 10}mm`, preferCSSPageSize: false, printBackground: true });
  const sheets = (pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g) ?? []).length;
  say(sheets >= 1 && sheets <= 2, `${format}, 10 mm shorter: ${sheets} sheets`);
}
await paper.emulateMedia({ media: 'print' });
const points = await paper.evaluate(() => Math.min(...[...document.querySelectorAll('p, li, th, td, caption, h1, h2, figcaption')]
    .filter((e) => e.getClientRects().length).map((e) => parseFloat(getComputedStyle(e).fontSize) * 0.75)));
say(points >= 8 - 1e-6, `on paper: smallest text outside of pictures ${points.toFixed(1)} pt`);
// A4 and Letter less the margins of the page.
for (const [format, millimeters] of [['A4', 196], ['Letter', 201.9]]) {
  await paper.setViewportSize({ width: Math.floor(millimeters / 25.4 * 96), height: 900 });
  const drawn = await paper.evaluate(() => [...document.querySelectorAll('svg text')]
      .filter((t) => t.textContent.trim() && t.ownerSVGElement.getClientRects().length).map((t) => {
        const svg = t.ownerSVGElement;
        return 0.75 * parseFloat(getComputedStyle(t).fontSize) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
      }));
  if (drawn.length) say(Math.min(...drawn) >= 8, `${format}: smallest text of a picture ${Math.min(...drawn).toFixed(1)} pt`);
}
await paper.context().close();

// The picture for the README: the answer and the pictures that follow it.
const top = await open(1200, 'light');
const end = await top.evaluate(() => {
  const box = (document.querySelector('.answer + .pictures') ?? document.querySelector('.answer')).getBoundingClientRect();
  return Math.ceil(box.bottom + window.scrollY);
});
await top.screenshot({ path: join(folder, 'top.png'), fullPage: true, clip: { x: 0, y: 0, width: 1200, height: end } });
await top.context().close();

const plain = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
plain.on('request', (request) => { if (request.url() !== address) requests.push(request.url()); });
await plain.goto(address);
const words = (await plain.textContent('body')).length;
say(words > 0, `without scripts: ${words} characters of text`);
say(requests.length === 0, `requests besides the page: ${requests.length} ${requests.join(' ')}`);
say(problems.length === 0, `errors and dialogs: ${problems.length} ${problems.join('; ')}`);
await browser.close();
process.exit(failed ? 1 : 0);
