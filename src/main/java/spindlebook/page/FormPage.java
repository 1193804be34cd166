package spindlebook.page;

import java.util.List;

/**
 * A page that is one form.
 *
 * @param action where it is sent
 * @param submit what its button does, a verb first
 * @param back where one goes without sending it; null for nowhere
 */
public record FormPage(
    PageFrame frame,
    String action,
    FormKey formKey,
    List<FormPart> parts,
    String submit,
    String back) {}
