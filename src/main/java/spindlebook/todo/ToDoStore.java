package spindlebook.todo;

import spindlebook.corner.Content;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.web.FormKey;

/** Things to do, into the book. */
public final class ToDoStore {
  private final Book book;

  public ToDoStore(Book book) {
    this.book = book;
  }

  void add(Content.ToDo toDo, FormKey form, String who) {
    book.append(Bodies.draft(form.key(), form.after(), who, toDo));
  }
}
