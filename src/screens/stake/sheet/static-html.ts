import {
  type ComponentChild,
  type ComponentChildren,
  isValidElement,
  toChildArray,
  type VNode,
} from 'preact';

/** Elements that have no end tag. */
const VOID = new Set(['br', 'hr', 'img', 'meta', 'link', 'input']);

/**
 * A tree of components as the text of an HTML page. Every text and every attribute is escaped. Only for components that keep no
 * state and handle nothing: what a page without a script could not do is refused.
 *
 * @throws RangeError at a handler, at raw HTML, and at a name that is no name of an element or an attribute
 */
export function staticHtml(children: ComponentChildren): string {
  return toChildArray(children).map(childHtml).join('');
}

function childHtml(child: ComponentChild): string {
  if (isValidElement(child)) return elementHtml(child as VNode<Record<string, unknown>>);
  return typeof child === 'string' || typeof child === 'number' ? escaped(String(child)) : '';
}

function elementHtml({ type, props }: VNode<Record<string, unknown>>): string {
  if (typeof type === 'function') {
    // A function component and no class: it is called for what it draws.
    const draw = type as (props: unknown) => ComponentChildren;
    return staticHtml(draw(props));
  }
  const { children, ...attributes } = props;
  const open = `<${nameOf(String(type))}${Object.entries(attributes).map(attributeHtml).join('')}>`;
  if (VOID.has(String(type))) return open;
  return `${open}${staticHtml(children as ComponentChildren)}</${String(type)}>`;
}

function attributeHtml([name, value]: [string, unknown]): string {
  if (value === undefined || value === null || value === false) return '';
  if (value === true) return ` ${nameOf(name)}`;
  if (name.startsWith('on') || (typeof value !== 'string' && typeof value !== 'number'))
    throw new RangeError(`A page without a script cannot have ${name}`);
  return ` ${nameOf(name)}="${escaped(String(value))}"`;
}

const NAME = /^[A-Za-z][A-Za-z0-9-]*$/;

function nameOf(name: string): string {
  if (!NAME.test(name)) throw new RangeError(`${name} is no name of an element or an attribute`);
  return name;
}

const ESCAPES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it may stand between tags and between quotes. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ESCAPES[sign]!);
