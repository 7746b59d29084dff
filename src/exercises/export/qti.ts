import { shortest } from '../../formula/notation/write.ts';
import { bodyOf, rubricOf } from './body.ts';
import { escape, line, paragraphs } from './html.ts';
import type { Item, Part } from './item.ts';

const HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n';

/** What is written here is the same in both: 2.2 has names of its own for it, and more that is not needed. */
export type Version = '2.1' | '2.2';

interface Names {
  readonly space: string;
  readonly at: string;
  readonly part: string;
  readonly package: string;
}

const namesOf = (version: Version): Names => {
  const part = `v${version.replace('.', 'p')}`;
  return {
    space: `http://www.imsglobal.org/xsd/imsqti_${part}`,
    at: `http://www.imsglobal.org/xsd/qti/qti${part}/imsqti_${part}.xsd`,
    part,
    package: `QTIv${version} Package`,
  };
};

const CP = 'http://www.imsglobal.org/xsd/imscp_v1p1';
const XSI = 'http://www.w3.org/2001/XMLSchema-instance';

const schema = (of: string, at: string): string =>
  `xmlns="${of}" xmlns:xsi="${XSI}" xsi:schemaLocation="${of} ${at}"`;

/** Names as the schemas want them: beginning with a letter. */
const nameOf = ({ id }: Item): string => `item-${id}`;
const pictureOf = (item: Item): string => `${nameOf(item)}.svg`;

/** The one response of an item has the name that systems look for. */
const responseOf = ({ parts }: Item, { id }: Part): string =>
  parts.length === 1 ? 'RESPONSE' : id.toUpperCase();
const scoreOf = ({ parts }: Item, { id }: Part): string =>
  parts.length === 1 ? 'SCORE' : `${id.toUpperCase()}_SCORE`;
const feedbackOf = ({ id }: Part): string => `${id.toUpperCase()}_FEEDBACK`;

const base = (type: string, value: string): string =>
  `<baseValue baseType="${type}">${value}</baseValue>`;
const variable = (name: string): string => `<variable identifier="${name}"/>`;
const set = (name: string, expression: string): string =>
  `<setOutcomeValue identifier="${name}">${expression}</setOutcomeValue>`;
const outcome = (name: string, type: string, more = ''): string =>
  `<outcomeDeclaration identifier="${name}" cardinality="single" baseType="${type}"${more}`;
const number = (name: string): string =>
  `${outcome(name, 'float')}><defaultValue><value>0</value></defaultValue></outcomeDeclaration>`;
const modal = (name: string, id: string, html: string): string =>
  `<modalFeedback outcomeIdentifier="${name}" identifier="${id}" showHide="show">${html}</modalFeedback>`;

const declare = (item: Item, part: Part): string => {
  const start = `<responseDeclaration identifier="${responseOf(item, part)}"`;
  switch (part.kind) {
    case 'number':
      return `${start} cardinality="single" baseType="float"><correctResponse><value>${shortest(part.key)}</value></correctResponse></responseDeclaration>`;
    case 'choice': {
      const right = part.options.filter(({ credit }) => credit > 0);
      const values = right.map(({ id }) => `<value>${id}</value>`).join('');
      const map = part.options.map(
        ({ id, credit }) =>
          `<mapEntry mapKey="${id}" mappedValue="${shortest(credit * part.weight)}"/>`,
      );
      return `${start} cardinality="${part.many ? 'multiple' : 'single'}" baseType="identifier"><correctResponse>${values}</correctResponse><mapping lowerBound="0" upperBound="${part.weight}" defaultValue="0">${map.join('')}</mapping></responseDeclaration>`;
    }
    case 'open':
      return `${start} cardinality="single" baseType="string"/>`;
  }
};

const interaction = (item: Item, part: Part): string => {
  const response = responseOf(item, part);
  switch (part.kind) {
    case 'number':
      return `<p>${line(part.prompt)} <textEntryInteraction responseIdentifier="${response}" expectedLength="12"/></p>`;
    case 'choice': {
      const choices = part.options.map(
        ({ id, text }) => `<simpleChoice identifier="${id}">${line(text)}</simpleChoice>`,
      );
      return `<choiceInteraction responseIdentifier="${response}" shuffle="false" maxChoices="${part.many ? 0 : 1}"><prompt>${line(part.prompt)}</prompt>${choices.join('')}</choiceInteraction>`;
    }
    case 'open':
      return `<rubricBlock view="scorer">${rubricOf(part.rubric, item.solution)}</rubricBlock><extendedTextInteraction responseIdentifier="${response}" expectedLines="12"><prompt>${line(part.prompt)}</prompt></extendedTextInteraction>`;
  }
};

const process = (item: Item, part: Part): string => {
  const [response, score, feedback] = [
    responseOf(item, part),
    scoreOf(item, part),
    feedbackOf(part),
  ];
  if (part.kind === 'open') return '';
  if (part.kind === 'choice')
    return (
      set(score, `<mapResponse identifier="${response}"/>`) + set(feedback, variable(response))
    );
  // Between two bounds, and not `equal` with a tolerance: importers disagree about which of its two sides that widens.
  const cases = part.accepted.map(({ low, high, credit, say }, i) => {
    const bound = (name: string, end: number): string =>
      `<${name}>${variable(response)}${base('float', shortest(end))}</${name}>`;
    const name = i === 0 ? 'responseIf' : 'responseElseIf';
    return `<${name}><and>${bound('gte', low)}${bound('lte', high)}</and>${set(score, base('float', shortest(credit * part.weight)))}${say && set(feedback, base('identifier', `answer-${i}`))}</${name}>`;
  });
  return `<responseCondition>${cases.join('')}</responseCondition>`;
};

const responses = (item: Item): string => {
  const { parts } = item;
  if (parts.every(({ kind }) => kind === 'open')) return '';
  const scored = parts.map((part) => process(item, part)).join('');
  // Of two parts neither counts without the other, as on the site.
  const both = `<responseCondition><responseIf><not><or>${parts.map((part) => `<isNull>${variable(responseOf(item, part))}</isNull>`).join('')}</or></not>${scored}</responseIf></responseCondition>`;
  const sum = set(
    'SCORE',
    `<sum>${parts.map((part) => variable(scoreOf(item, part))).join('')}</sum>`,
  );
  return `<responseProcessing>${parts.length > 1 ? both + sum : scored}${set('SOLUTION', base('identifier', 'solution'))}</responseProcessing>`;
};

const sayings = (part: Part): string => {
  const name = feedbackOf(part);
  if (part.kind === 'number')
    return part.accepted
      .map(({ say }, i) => say && modal(name, `answer-${i}`, paragraphs(say)))
      .join('');
  return part.kind === 'choice'
    ? part.options.map(({ id, say }) => modal(name, id, paragraphs(say))).join('')
    : '';
};

const root = ({ space, at }: Names): string => schema(space, at);

/** One item as an `assessmentItem`. */
const qtiItem = (item: Item, names: Names): string => {
  const { parts, title } = item;
  const open = parts.every(({ kind }) => kind === 'open');
  const outcomes = parts.flatMap((part) => {
    if (part.kind === 'open') return [];
    const many = part.kind === 'choice' && part.many;
    return [
      ...(parts.length > 1 ? [number(scoreOf(item, part))] : []),
      `<outcomeDeclaration identifier="${feedbackOf(part)}" cardinality="${many ? 'multiple' : 'single'}" baseType="identifier"/>`,
    ];
  });
  return (
    HEAD +
    `<assessmentItem ${root(names)} identifier="${nameOf(item)}" title="${escape(title)}" xml:lang="en-GB" adaptive="false" timeDependent="false">` +
    parts.map((part) => declare(item, part)).join('') +
    `${outcome('SCORE', 'float', ' normalMaximum="1" normalMinimum="0"')}><defaultValue><value>0</value></defaultValue></outcomeDeclaration>` +
    outcomes.join('') +
    (open ? '' : `${outcome('SOLUTION', 'identifier')}/>`) +
    `<itemBody>${bodyOf(item, pictureOf(item))}${parts.map((part) => interaction(item, part)).join('')}</itemBody>` +
    responses(item) +
    parts.map(sayings).join('') +
    (open ? '' : modal('SOLUTION', 'solution', paragraphs(item.solution))) +
    '</assessmentItem>\n'
  );
};

const test = (items: readonly Item[], title: string, names: Names): string => {
  const refs = items.map(
    (item) =>
      `<assessmentItemRef identifier="${nameOf(item)}" href="${nameOf(item)}.xml" fixed="true"/>`,
  );
  return `${HEAD}<assessmentTest ${root(names)} identifier="test" title="${escape(title)}"><testPart identifier="part" navigationMode="nonlinear" submissionMode="individual"><assessmentSection identifier="section" title="${escape(title)}" visible="true">${refs.join('')}</assessmentSection></testPart></assessmentTest>\n`;
};

const manifest = (items: readonly Item[], names: Names): string => {
  const resources = items.map((item) => {
    const file = `${nameOf(item)}.xml`;
    const drawn = item.figure?.show === 'drawing' ? `<file href="${pictureOf(item)}"/>` : '';
    return `<resource identifier="${nameOf(item)}" type="imsqti_item_xml${names.part}" href="${file}"><file href="${file}"/>${drawn}</resource>`;
  });
  const needs = items.map((item) => `<dependency identifierref="${nameOf(item)}"/>`);
  return `${HEAD}<manifest ${schema(CP, 'http://www.imsglobal.org/xsd/imscp_v1p1.xsd')} identifier="manifest"><metadata><schema>${names.package}</schema><schemaversion>1.0.0</schemaversion></metadata><organizations/><resources><resource identifier="test" type="imsqti_test_xml${names.part}" href="test.xml"><file href="test.xml"/>${needs.join('')}</resource>${resources.join('')}</resources></manifest>\n`;
};

/** A content package of QTI: its files by path, the manifest first. */
export const qtiPackage = (
  items: readonly Item[],
  title: string,
  version: Version,
): Readonly<Record<string, string>> => {
  const names = namesOf(version);
  return Object.fromEntries<string>([
    ['imsmanifest.xml', manifest(items, names)],
    ['test.xml', test(items, title, names)],
    ...items.flatMap((item): (readonly [string, string])[] => [
      [`${nameOf(item)}.xml`, qtiItem(item, names)],
      ...(item.figure?.show === 'drawing'
        ? [[pictureOf(item), item.figure.drawing.svg] as const]
        : []),
    ]),
  ]);
};
