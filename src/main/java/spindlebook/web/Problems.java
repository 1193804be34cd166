package spindlebook.web;

import spindlebook.page.ProblemPage;

/** What is said when a request cannot be answered. */
final class Problems {
  private Problems() {}

  static ProblemPage of(int status) {
    return switch (status) {
      case 403 ->
          new ProblemPage(
              403, "This device may only look", "Only a device that keeps the book opens this.");
      case 404 -> new ProblemPage(404, "Not here", "Nothing in this book has that address.");
      case 405 ->
          new ProblemPage(405, "Not that way", "This address is looked at, or sent to, not both.");
      case 408 ->
          new ProblemPage(
              408, "Too slow", "What was sent came too slowly to wait for; send it again.");
      case 413 ->
          new ProblemPage(
              413,
              "Too much at once",
              "That is more than a form of this book sends; a photo has 12 MB at most.");
      case 415 ->
          new ProblemPage(415, "Not a form", "This address takes what a form of this book sends.");
      case 431 ->
          new ProblemPage(431, "Too much around it", "The lines before a request are too long.");
      case 500 ->
          new ProblemPage(
              500,
              "Something broke here",
              "What was in the book still is; go back, and send it again if it is not there.");
      default -> new ProblemPage(status, "That did not work", "Go back and try it again.");
    };
  }
}
