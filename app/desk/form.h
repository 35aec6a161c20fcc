/// A dialog of named fields that stays open, with the sentence at the field, until what is typed can be kept.
#pragma once

#include <functional>
#include <optional>

#include <QDialog>
#include <QHash>

class QFormLayout;

namespace puteal::desk
{

class MarkedWords;

class Form : public QDialog
{
    Q_OBJECT
public:
    /// What cannot be kept, and the field where it is mended.
    struct Problem {
        QWidget *field = nullptr;
        QString words;
    };
    /// Keeps what the fields hold, or says what is wrong with it.
    using Keep = std::function<std::optional<Problem>()>;

    Form(QWidget *parent, const QString &title, const QString &words);

    template<class Field>
    Field *add(const QString &name, Field *field)
    {
        addField(name, field);
        return field;
    }
    /// Shows the form until `keep` has nothing to complain of (true) or the person leaves (false).
    bool ask(const Keep &keep);
    /// The sentence that stands at a field; empty when it has none.
    QString complaintAt(QWidget *field) const;

private:
    void addField(const QString &name, QWidget *field);
    void complain(const Problem &problem);

    QFormLayout *m_form;
    QHash<QWidget *, MarkedWords *> m_complaints;
};

} // namespace puteal::desk
