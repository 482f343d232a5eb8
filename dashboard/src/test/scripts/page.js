// A page of its own for each test: a real DOM, the markup given, and our script in it.
import {readFile} from 'node:fs/promises';
import {JSDOM} from 'jsdom';

const ASSETS = new URL('../../main/resources/META-INF/resources/assets/', import.meta.url);
const BROWSER = ['document', 'localStorage', 'matchMedia', 'wardClock'];

/** The text of one of the assets. */
export const asset = (name) => readFile(new URL(name, ASSETS), 'utf8');

/**
 * Makes its document and storage the global ones, as a module of the page finds them.
 *
 * @param html the whole page
 */
export function open(html, address = 'http://127.0.0.1/') {
  const {window} = new JSDOM(html, {url: address, runScripts: 'outside-only', pretendToBeVisual: true});
  for (const name of BROWSER) {
    globalThis[name] = window[name];
  }
  return window;
}

/** What a module exports, read anew: as often as a page is opened, it starts from nothing. */
export async function module(name) {
  const text = `${await asset(name)}\n// ${Math.random()}`;
  return import(`data:text/javascript,${encodeURIComponent(text)}`);
}

/** Runs a classic script in the page. */
export async function script(window, name) {
  window.eval(await asset(name));
}
