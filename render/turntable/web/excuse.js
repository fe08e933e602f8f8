// Written for the oldest browsers, which stop at the script that follows.
window.excuse = function () {
  document.getElementById("excuse").hidden = false;
};
window.onerror = window.excuse;
