// Runs before every npm script, on whatever Node the machine has: so no syntax newer than 2009.
// It must come first, because an old Node would stop at a type annotation with a riddle.
'use strict';

var needed = 24;

/** @param {string} version */
function isOldEnoughToFail(version) {
  var major = parseInt(String(version).replace(/^v/, ''), 10);
  return !(major >= needed);
}

/** @param {string} version */
function message(version) {
  return (
    'Sitting by Numbers needs Node ' +
    needed +
    ' or later, found ' +
    version +
    '; do: npm ci (it brings Node ' +
    needed +
    ' along for Linux and Windows), or install it from https://nodejs.org and try again.'
  );
}

if (require.main === module && isOldEnoughToFail(process.version)) {
  console.error(message(process.version));
  process.exit(1);
}

module.exports = { isOldEnoughToFail: isOldEnoughToFail, message: message };
