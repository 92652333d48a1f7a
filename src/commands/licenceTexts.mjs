/** Licences that let the page be shipped with the package in it, by what their texts say; the most particular first. */
const texts = [
  { licence: 'Apache-2.0', says: /Apache License,?\s+Version 2\.0/i },
  { licence: 'OFL-1.1', says: /SIL OPEN FONT LICENSE\s+Version 1\.1/i },
  {
    licence: 'ISC',
    says: /Permission to use, copy, modify, and(\/or)? distribute this software for any purpose/i,
  },
  {
    licence: 'BSD-3-Clause',
    says: /Redistribution and use in source and binary forms[\s\S]+Neither the name|Redistribution and use in source and binary forms[\s\S]+name of .{0,80} may not be used/i,
  },
  { licence: 'BSD-2-Clause', says: /Redistribution and use in source and binary forms/i },
  { licence: 'MIT', says: /Permission is hereby granted, free of charge, to any person obtaining a copy/i },
];

/** Licences by which a page may be shipped with the package in it. */
export const permissive = texts.map(({ licence }) => licence);

/**
 * The licence that a text is, by the words that it must have in it; null for one that is not known to be permissive.
 * @param {string} text
 */
export const licenceOfText = (text) =>
  texts.find(({ says }) => says.test(text.replace(/\s+/g, ' ')))?.licence ?? null;

/** The name that a package's licence text goes by. */
export const isLicenceFile = (/** @type {string} */ name) => /^(licen[cs]e|copying)([-.].*)?$/i.test(name);

/**
 * The packages of a lock file that the page is built from, those that they need included, by their folders.
 * @param {{ packages?: Record<string, { version?: string, dev?: boolean, devOptional?: boolean, optional?: boolean, link?: boolean }> }} lock
 */
export const shippedPackages = ({ packages = {} }) =>
  Object.entries(packages).flatMap(([folder, { version = '', dev, optional }]) =>
    folder === '' || dev || optional
      ? []
      : [{ folder, name: folder.replace(/^.*node_modules\//, ''), version }],
  );

/**
 * What is known of one package's licence. `from` says by what: its text, or its own statement where it ships no text.
 * @param {{ stated: string | undefined, text: string | null }} found
 */
export function judgeLicence({ stated, text }) {
  const byText = text === null ? null : licenceOfText(text);
  if (text !== null && byText === null)
    return {
      licence: stated ?? 'unknown',
      from: 'text',
      fault: 'its licence text is none of the permissive ones known',
    };
  if (byText !== null && stated !== undefined && !stated.includes(byText))
    return { licence: stated, from: 'text', fault: `it states ${stated}, but its text is that of ${byText}` };
  if (byText !== null) return { licence: byText, from: 'text', fault: null };
  if (stated !== undefined && permissive.includes(stated))
    return { licence: stated, from: 'statement', fault: null };
  return {
    licence: stated ?? 'unknown',
    from: 'statement',
    fault: 'it has no licence text, and states no permissive licence',
  };
}
