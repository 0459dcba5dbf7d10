// The browser comes from the places listed in src/report/browser.ts, never from an install script.
module.exports = { skipDownload: true };
